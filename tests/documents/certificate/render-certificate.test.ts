import { describe, expect, it } from "vitest";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import { pdfPages } from "@/tests/support/pdf-text";
import { sampleContent } from "./sample-content";

const issued = await renderCertificate(sampleContent, { draft: false });
const pages = await pdfPages(issued);
const text = pages.join("\n").replace(/\s+/g, " ");

/** ISO/IEC 17025:2017, 7.8.2.1 a to p and 7.8.4.1 a to e: what must stand in the text, item by item. */
const items: readonly [string, string, readonly string[]][] = [
  ["7.8.2.1 a", "a title", ["Calibration certificate"]],
  ["7.8.2.1 b", "name and address of the laboratory", ["Harrow Vale Calibration", "4 Kiln Lane"]],
  ["7.8.2.1 c", "place of performance", ["At the laboratory's address"]],
  ["7.8.2.1 d", "unique identification and a clear end", ["C-2026-0007", "End of certificate C-2026-0007"]],
  [
    "7.8.2.1 e",
    "name and contact of the customer",
    ["Brandt Höfle Heat Treatment", "ines@brandt-hoefle.example"],
  ],
  ["7.8.2.1 f", "the method", ["Comparison in a tube furnace"]],
  [
    "7.8.2.1 g",
    "the item, unambiguous, and its condition",
    ["HX-K-4471", "T-000042", "As described in the order"],
  ],
  ["7.8.2.1 h", "date of receipt", ["Received 2026-10-08"]],
  ["7.8.2.1 i", "dates of performance", ["2026-10-14 to 2026-10-15"]],
  ["7.8.2.1 j", "date of issue", ["Issued 2026-10-16"]],
  ["7.8.2.1 k", "sampling, or that there was none", ["took no sample"]],
  ["7.8.2.1 l", "results relate to the item alone", ["The results relate only to the item"]],
  ["7.8.2.1 m", "results with units", ["37 372", "µV", "−1.2", "°C"]],
  ["7.8.2.1 n", "deviations and exclusions", ["At 1150 °C no result: not reached"]],
  ["7.8.2.1 o", "who authorised it", ["Odile Marchetti"]],
  ["7.8.2.1 p", "external results, or none", ["every result was obtained by this laboratory"]],
  [
    "7.8.4.1 a",
    "measurement uncertainty in the unit of the measurand",
    ["0.75", "expanded uncertainty", "2.00"],
  ],
  ["7.8.4.1 b", "conditions", ["ITS-90", "Immersed 380 mm"]],
  [
    "7.8.4.1 c",
    "how the results are traceable",
    ["NTL-26-10431", "REF-S-01", "CE-26-2207", "traceable to the SI"],
  ],
  ["7.8.4.1 d", "before and after adjustment, or none made", ["Adjustment", "None made."]],
  [
    "7.8.4.1 e",
    "conformity, with its rule (7.8.6.2)",
    ["IEC 60584-1:2013, tolerance class 1", "Guarded acceptance", "at most 2.5 %", "Conditional pass"],
  ],
  ["7.8.4.3", "no interval is recommended", ["recommends no recalibration interval"]],
];

describe("the certificate's text", () => {
  it.each(items)("ISO/IEC 17025 %s: %s", (_clause, _what, wanted) => {
    for (const part of wanted) expect(text).toContain(part);
  });

  it("says page n of N on every page", () => {
    pages.forEach((page, index) => {
      expect(page.replace(/\s+/g, " ")).toContain(`page ${index + 1} of ${pages.length}`);
    });
  });

  it("shows every reported string of every row as it stands in the content", () => {
    for (const row of sampleContent.rows.filter((row) => row.state === "measured"))
      for (const shown of [
        row.referenceCelsius,
        row.emfMicrovolt,
        row.deviationMicrovolt,
        row.errorCelsius,
        row.expandedCelsius,
      ])
        expect(text).toContain(shown);
  });

  it("says no tolerance defined where class 1 of type K ends, and makes no statement there", () => {
    expect(text).toContain("No tolerance defined");
  });

  it("leaves the statement of conformity out where none was agreed", async () => {
    const bytes = await renderCertificate({ ...sampleContent, conformity: null }, { draft: false });
    expect((await pdfPages(bytes)).join(" ")).not.toContain("Statement of conformity");
  });
});

describe("the certificate's bytes", () => {
  it("are the same for the same content", async () => {
    expect(
      Buffer.from(await renderCertificate(sampleContent, { draft: false })).equals(Buffer.from(issued)),
    ).toBe(true);
  });

  it("change with a single digit of the content", async () => {
    const [first, ...rest] = sampleContent.rows;
    if (!first) throw new Error("the sample has rows");
    const other = { ...sampleContent, rows: [{ ...first, errorCelsius: "−0.25" }, ...rest] };
    expect(Buffer.from(await renderCertificate(other, { draft: false })).equals(Buffer.from(issued))).toBe(
      false,
    );
  });

  it("carry the watermark on every page of a draft, and on none of an issued certificate", async () => {
    const draft = await pdfPages(await renderCertificate(sampleContent, { draft: true }));
    expect(draft.length).toBeGreaterThan(1);
    for (const page of draft) expect(page).toContain("DRAFT");
    for (const page of pages) expect(page).not.toContain("DRAFT");
  });

  it("say in a draft what stands there once it is signed, under the hash of what is signed", async () => {
    const reviewed = reviewedForm(sampleContent);
    const draft = (await pdfPages(await renderCertificate(reviewed, { draft: true }))).join("\n");
    const said = draft.replace(/\s+/g, " ");
    expect(said).toContain("Issued once signed off");
    expect(said).toContain(
      "Not signed off yet The signatory’s name and role stand here once it is, with the day",
    );
    expect(said).toContain("End of certificate (draft)");
    expect(said).not.toMatch(/not (numbered|issued|signed off) yet/);
    expect(said).toContain(hex(contentHash(reviewed, sha256)));
  });

  it("embed the fonts", () => {
    expect(Buffer.from(issued).toString("latin1")).toContain("/FontFile2");
    expect(Buffer.from(issued).toString("latin1")).not.toMatch(/\/BaseFont \/Helvetica/);
  });
});
