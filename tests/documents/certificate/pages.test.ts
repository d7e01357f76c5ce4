import { describe, expect, it } from "vitest";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { pdfPages } from "@/tests/support/pdf-text";
import { changing } from "./changing";
import {
  amendment,
  authenticity,
  bilingual,
  fahrenheit,
  fitted,
  lotOfTwelve,
  rowOf,
  short,
  simplified,
  twoSets,
} from "./examples";

const plain = (page: string): string => page.replace(/\s+/g, " ");
const pagesOf = async (content: CertificateContent, draft = false): Promise<readonly string[]> =>
  (await pdfPages(await renderCertificate(content, { draft }))).map(plain);

const all = { short, simplified, amendment, bilingual, lotOfTwelve, twoSets, fahrenheit };
const pages = Object.fromEntries(
  await Promise.all(
    Object.entries(all).map(async ([name, content]) => [name, await pagesOf(content)] as const),
  ),
) as Record<keyof typeof all, readonly string[]>;
const each = Object.keys(all) as readonly (keyof typeof all)[];

describe("every page", () => {
  it.each(each)("of %s says whose it is, its number, page n of N, and where to check it", (name) => {
    const { number, laboratory } = all[name];
    pages[name].forEach((page, at) => {
      expect(page.startsWith(`${laboratory.name} ${laboratory.addressLines[0]}`)).toBe(true);
      expect(page).toContain(`${number} · page ${at + 1} of ${pages[name].length}`);
      expect(page).toContain(authenticity.address);
      expect(page).toMatch(/Content SHA-256 [0-9a-f]{64} /);
    });
  });

  it.each(each)("of %s but the last is without the end, which stands once, before the last foot", (name) => {
    const end = `End of certificate ${all[name].number}`;
    const holding = pages[name].flatMap((page, at) => (page.includes(end) ? [at] : []));
    expect(holding).toEqual([pages[name].length - 1]);
    const after =
      pages[name]
        .at(-1)
        ?.split(end)[1]
        ?.replace(/^ \/ \S+ \S+ \S+ \S+/, "")
        .trim() ?? "";
    expect(after.startsWith(`${all[name].number} · page`)).toBe(true);
  });

  it("of a draft has the word and no address", async () => {
    for (const page of await pagesOf(short, true)) {
      expect(page.startsWith("DRAFT ")).toBe(true);
      expect(page).not.toContain(authenticity.address);
    }
  });
});

describe("page one", () => {
  it.each(each)("of %s names the purchase order", (name) => {
    expect(pages[name][0]).toContain(`Purchase order ${all[name].order.purchaseOrder}`);
  });

  it("of an amendment says so before anything else: which one, its hash, and why", () => {
    const [first = ""] = pages.amendment;
    const { number, contentHash, reason } = amendment.amends ?? { number: "", contentHash: "", reason: "" };
    const said = first.indexOf(
      `Replaces certificate ${number} Reason ${reason} ${number} · Content SHA-256 ${contentHash}`,
    );
    expect(said).toBeGreaterThan(0);
    expect(said).toBeLessThan(first.indexOf("Customer"));
    expect(pages.short.join(" ")).not.toMatch(/Replaces certificate|Amendment to/);
  });

  it("of an amendment says what it was and what it is now, in each language (7.8.8.1)", async () => {
    const texts = { "Serial number": "Seriennummer", "Purchase order": "Bestellnummer" };
    const said = { ...changing(bilingual), translations: [{ language: "de" as const, texts }] };
    const [first = ""] = await pagesOf(said);
    expect(first).toContain("Changed Serial number: was “HX-K-4417”, now “HX-K-4471”");
    expect(first).toContain("Geändert Seriennummer: vorher “HX-K-4417”, jetzt “HX-K-4471”");
    expect(first).toContain("Changed Purchase order: was “PO-1”, now nothing");
  });
});

describe("how long it is", () => {
  it("one page for a simplified certificate of three points, two for a full one, more for more", () => {
    expect(pages.simplified.length).toBe(1);
    expect(pages.short.length).toBe(2);
    expect(pages.twoSets.length).toBeGreaterThan(5);
    expect(pages.lotOfTwelve.length).toBeGreaterThan(8);
  });
});

/** Keys whose values are codes, hashes or figures for drawing, or stand on a certificate in other words. */
const unprinted = new Set([
  "plot",
  "format",
  "version",
  "catalogue",
  "translations",
  "accreditationMark",
  "state",
  "role",
  "route",
  "kind",
  "form",
  "countryCode",
  "coverageProbability",
  "scope",
  "address",
]);

const textsOf = (value: unknown, key = ""): readonly string[] => {
  if (unprinted.has(key) && typeof value === "string") return [];
  if (typeof value === "string") return value === "" ? [] : [value];
  if (typeof value !== "object" || value === null || unprinted.has(key)) return [];
  return Object.entries(value).flatMap(([inner, one]) => textsOf(one, inner));
};

describe("what the content says", () => {
  const full = each.filter((name) => name !== "simplified");
  it.each(full)("stands in the document, every text of it: %s", (name) => {
    const text = pages[name].join(" ");
    const missing = new Set(textsOf(all[name]).filter((one) => !text.includes(plain(one))));
    // Their own forms: the coefficients are set as powers of ten, nominal temperatures stand as setpoints.
    expect([...missing].filter((one) => !/^-?[\d.]+e[+-]\d+$/.test(one) && !/^\d+$/.test(one))).toEqual([]);
  });

  it("of a simplified certificate leaves out emf, figure, table of standards and nothing that restricts it", () => {
    const text = pages.simplified.join(" ");
    const { conformity, externalResults, formStatement, traceabilityStatement, uncertaintyStatement } =
      simplified;
    const kept = [...simplified.statements, ...simplified.conditions, ...textsOf(conformity)];
    for (const said of [
      ...kept,
      externalResults,
      formStatement ?? "",
      traceabilityStatement,
      uncertaintyStatement,
    ])
      expect(text).toContain(said);
    for (const { calibrationCertificate, tag } of simplified.standards) {
      expect(text).toContain(tag);
      expect(text).toContain(calibrationCertificate);
    }
    expect(text).not.toMatch(/Emf at setpoint|Error with its expanded/);
  });

  it("is marked where it is external, an opinion, or in °F", () => {
    const text = pages.amendment.join(" ");
    expect(text.split("500 °C ‡").length - 1).toBe(2);
    expect(text).toContain(`‡ ${amendment.externalResults}`);
    expect(text).toContain(
      "Opinions and interpretations Opinions are not results of the calibration. The drift",
    );
    expect(text).toContain("Odile Marchetti, 2026-10-16");
    for (const { setpoint } of fahrenheit.rows) expect(pages.fahrenheit.join(" ")).toContain(setpoint);
  });

  it("stands in the second language below the first: captions, sentences, page numbers", () => {
    const text = pages.bilingual.join(" ");
    for (const said of [
      "Calibration certificate Kalibrierschein",
      "Results Ergebnisse",
      "None made. Keine vorgenommen.",
      "Conditional pass Bedingt bestanden",
      "page 2 of 4 / Seite 2 von 4",
      "The English text binds",
    ])
      expect(text).toContain(said);
    expect(pages.short.join(" ")).not.toContain("The English text binds");
  });
});

describe("the order of reading", () => {
  it("is that of the page: head, what it is, results, what is said of them, grounds, who authorised it, foot", () => {
    const text = pages.short.join(" ");
    const order = [
      "Harrow Vale Calibration",
      "Thermocouple type K",
      "Customer",
      "Purchase order",
      "Serial number",
      "Received",
      "Place",
      "Results",
      "Reference: temperature",
      "Statement of conformity",
      "Guarded acceptance",
      "Tolerance",
      "Error with its expanded",
      "Method",
      "Conditions",
      "Traceability",
      "REF-S-01",
      "Uncertainty",
      "Adjustment",
      "Sampling",
      "Statements",
      "Authorised by",
      "End of certificate",
    ];
    const places = order.map((caption) => text.indexOf(caption));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((one, other) => one - other));
  });

  it("keeps to the row in a table", () => {
    const [row] = short.rows;
    if (!row) throw new Error("the example has rows");
    const figures = [
      row.setpoint,
      row.referenceCelsius,
      row.emfMicrovolt,
      row.deviationMicrovolt,
      row.expandedMicrovolt,
      row.errorCelsius,
      row.correctionCelsius,
      row.expandedCelsius,
      row.coverageFactor,
    ];
    expect(pages.short.join(" ")).toContain(figures.map(plain).join(" "));
  });
});

const head = "Setpoint as ordered Reference °C Emf at setpoint";
const heads = [
  "Results",
  "Statement of conformity",
  "Error with its expanded uncertainty",
  "Deviation function and corrections",
  "Traceability",
  "Uncertainty budgets",
  "Coefficient Value Unit",
  "U °C k",
  "Statement",
];
const bodyOf = (page: string): string => page.slice(0, page.lastIndexOf("C-2026-")).trim();

describe("where a page ends", () => {
  const long = (count: number): CertificateContent => ({
    ...short,
    rows: Array.from({ length: count }, (_, at) => rowOf(300 + 7 * at, 0.4, 1, 3)),
    ...(count % 3 === 0 ? { function: fitted(() => "") } : {}),
  });

  it("no row is cut, and each page of a long table has its heads", async () => {
    const found = await pagesOf(long(62));
    const rows = long(62).rows.map((row) =>
      [row.setpoint, row.referenceCelsius, row.emfMicrovolt].map(plain).join(" "),
    );
    const holding = found.filter((page) => rows.some((row) => page.includes(row)));
    expect(holding.length).toBeGreaterThan(1);
    for (const page of holding) expect(page).toContain(head);
    for (const row of rows) expect(found.filter((page) => page.includes(row)).length).toBe(1);
  });

  it.each([5, 9, 12, 13, 14, 17, 30])(
    "no title is left alone at a page's foot, with %i rows",
    async (count) => {
      for (const page of await pagesOf(long(count)))
        for (const title of heads) expect(bodyOf(page).endsWith(title)).toBe(false);
    },
  );
});
