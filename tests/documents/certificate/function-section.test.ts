import { describe, expect, it } from "vitest";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { scientific } from "@/lib/documents/certificate/scientific";
import type { CertificateFunction } from "@/lib/domain/certificate/content";
import { pdfPages } from "@/tests/support/pdf-text";
import { sampleContent } from "./sample-content";

/** Invented. */
const fitted: CertificateFunction = {
  degree: 2,
  isThroughZero: true,
  coefficients: [
    { power: 0, value: "0e+0", unit: "µV" },
    { power: 1, value: "-5.93e-2", unit: "µV/°C" },
    { power: 2, value: "8.71e-5", unit: "µV/°C²" },
  ],
  fromCelsius: "300",
  toCelsius: "1100",
  unit: "°F",
  coverageFactor: "2.06",
  rows: Array.from({ length: 70 }, (_, row) => ({
    temperature: String(600 + 20 * row),
    correction: `−${(row / 50).toFixed(1)}`,
    expanded: "1.7",
    remark: row === 69 ? "Outside the accredited scope" : "",
  })),
  statements: ["D(t) = a1·t + a2·t²: invented."],
  plot: {
    curve: [300, 700, 1100].map((celsius) => ({ celsius, value: celsius / 20, expanded: 40 })),
    points: [300, 700, 1100].map((celsius) => ({
      celsius,
      value: celsius / 20 + 3,
      fitted: celsius / 20,
    })),
  },
};
const textOf = async (content: typeof sampleContent) => {
  const pages = await pdfPages(await renderCertificate(content, { draft: false }));
  return pages.join("\n").replace(/\s+/g, " ");
};
const title = "Deviation function and corrections";

describe("the section of the deviation function", () => {
  it("stands after the results, with curve, coefficients and every row of the table", async () => {
    const text = await textOf({ ...sampleContent, function: fitted });
    expect(text.indexOf(title)).toBeGreaterThan(text.indexOf("Results"));
    expect(text.indexOf(title)).toBeLessThan(text.indexOf("Comparison in a tube furnace"));
    for (const wanted of [
      "D(t) = a1·t + a2·t²: invented.",
      "−5.93 × 10⁻²",
      "µV/°C²",
      "k = 2.06",
      "deviation, µV",
      "Outside the accredited scope",
      "1980",
    ])
      expect(text).toContain(wanted);
    for (const { temperature } of fitted.rows) expect(text).toContain(temperature);
  });

  it("is not there where none was asked for", async () => {
    expect(await textOf(sampleContent)).not.toContain(title);
  });
});

describe("a coefficient as it is set", () => {
  it.each([
    ["-5.93e-2", "−5.93 × 10⁻²"],
    ["8.71e-15", "8.71 × 10⁻¹⁵"],
    ["1.2e+3", "1.2 × 10³"],
    ["-7e+0", "−7"],
    ["0e+0", "0"],
    ["0.000e+0", "0"],
  ])("%s as %s", (text, set) => expect(scientific(text)).toBe(set));
});
