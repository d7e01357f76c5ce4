import { describe, expect, it } from "vitest";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import type { EvaluatedFunction } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { demand } from "@/lib/domain/refusal";
import { found, refused } from "@/lib/metrology/outcome";
import { inventedParts } from "../../support/certificate-parts";
import { askFunction, lineThroughZero } from "../evidence/ask-function";
import { evaluate } from "../evidence/measured";

/* The deviation function on a certificate. All of it is invented. */

const functionOf = (evidence: EvidenceInput): EvaluatedFunction => {
  const [fitted] = evaluate(evidence).functions;
  if (!fitted) throw new Error("no function");
  return fitted;
};
const over = [300, 500, 700, 900, 1100];
const asked = (unit: "celsius" | "fahrenheit") =>
  askFunction({ over, choice: { ...lineThroughZero, table: { unit, step: 200 } } });
const compose = (deviationFunction: ReturnType<typeof inventedParts>["deviationFunction"]) =>
  demand(composeCertificate(inventedParts({ deviationFunction }), null));

describe("the deviation function of a certificate", () => {
  const evaluated = functionOf(asked("celsius"));
  const content = compose(found(evaluated));

  it("carries degree, range, coefficients and the table as the evaluation printed them", () => {
    expect(content.function).toMatchObject({
      degree: 1,
      isThroughZero: true,
      fromCelsius: "300",
      toCelsius: "1100",
      unit: "°C",
      coverageFactor: evaluated.coverageFactor.toFixed(2),
    });
    expect(content.function?.coefficients).toEqual([
      { power: 0, value: evaluated.coefficients.texts[0], unit: "µV" },
      { power: 1, value: evaluated.coefficients.texts[1], unit: "µV/°C" },
    ]);
    expect(content.function?.rows).toEqual(
      evaluated.table.rows.map(({ degrees, printedCorrection, printedExpanded }) => ({
        temperature: String(degrees),
        correction: printedCorrection.replace("-", "−"),
        expanded: printedExpanded,
        remark: "",
      })),
    );
    expect(content.function?.rows.map(({ temperature }) => temperature)).toEqual([
      "400",
      "600",
      "800",
      "1000",
    ]);
  });

  it("says what the curve is, where it holds and what its U is", () => {
    const text = content.function?.statements.join(" ");
    expect(text).toContain("D(t) = a1·t: deviation of the emf in µV");
    expect(text).toContain("to the 5 measured points and through 0 µV at 0 °C");
    expect(text).toContain("from 300 °C to 1100 °C");
    expect(text).not.toContain("capability");
  });

  it("keeps the unit that was asked for", () => {
    expect(compose(found(functionOf(asked("fahrenheit")))).function).toMatchObject({
      unit: "°F",
      rows: [{ temperature: "600" }, {}, {}, {}, {}, {}, {}, { temperature: "2000" }],
    });
  });

  it("marks rows outside the scope and says where the capability stands for U", () => {
    const scope = [
      { type: "N", fromCelsius: 0, toCelsius: 700, expandedCelsius: 4, source: "invented" } as const,
    ];
    const scoped = compose(found(functionOf({ ...asked("celsius"), scope }))).function;
    expect(scoped?.rows.map(({ remark }) => remark)).toEqual([
      "",
      "",
      "Outside the accredited scope",
      "Outside the accredited scope",
    ]);
    expect(scoped?.rows[0]?.expanded).toBe("4.0");
    expect(scoped?.statements.join(" ")).toContain("calibration and measurement capability");
  });

  it("reads back from its canonical text, which is what is signed", () => {
    const text = canonicalContent(content);
    expect(canonicalContent(CertificateContent.parse(JSON.parse(text)))).toBe(text);
  });
});

describe("a certificate without a deviation function", () => {
  it("has no such key where none was asked for: the content is that of certificates before it", () => {
    const plain = compose(null);
    expect("function" in plain).toBe(false);
    expect(canonicalContent(plain)).not.toContain('"function"');
  });

  it("says under deviations why one that was asked for is missing", () => {
    const without = compose(refused("too-few", "degree 1 needs 3 distinct temperatures, not 2"));
    expect("function" in without).toBe(false);
    expect(without.deviations).toContain(
      "No deviation function, though one was asked for: degree 1 needs 3 distinct temperatures, not 2.",
    );
  });
});
