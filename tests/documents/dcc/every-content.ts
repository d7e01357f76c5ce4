import type {
  CertificateContent,
  CertificateFunction,
  CertificateRow,
} from "@/lib/domain/certificate/content";
import { sampleContent } from "@/tests/documents/certificate/sample-content";
import { measuredPoint } from "@/tests/support/evaluated-point";
import { both, bundled, member, order } from "./composed";

export const hash = "5e".repeat(32);

const laboratory = { ...sampleContent.laboratory, countryCode: "GB" };

const states = ["pass", "conditional-pass", "conditional-fail", "fail"] as const;
/** Limits at which an error of this size gets this word. */
const limits = {
  pass: [0.5, 1.5],
  "conditional-pass": [-0.2, 0.8],
  "conditional-fail": [-0.6, -0.2],
  fail: [-0.9, -0.7],
};

/** As composed since acceptance limits and coverage probability are part of a content. Invented. */
const stated = (row: CertificateRow, at: number): CertificateRow => {
  if (row.state !== "measured") return row;
  const state = states[at % 4] ?? "pass";
  const size = Math.abs(Number(row.errorCelsius.replace("−", "-")));
  const [acceptance = 0, tolerance = 0] = limits[state];
  return {
    ...row,
    coverageProbability: "0.9545",
    conformity: {
      state,
      tolerance: `± ${(size + tolerance).toFixed(2)}`,
      probability: "97.2 %",
      acceptance: (size + acceptance).toFixed(3),
    },
  };
};

export const single: CertificateContent = {
  ...sampleContent,
  laboratory,
  rows: sampleContent.rows.slice(0, 5).map(stated),
};

const fitted = (unit: "°C" | "°F"): CertificateFunction => ({
  degree: 2,
  isThroughZero: true,
  coefficients: [
    { power: 0, value: "0e+0", unit: "µV" },
    { power: 1, value: "-5.93e-2", unit: "µV/°C" },
    { power: 2, value: "8.71e-5", unit: "µV/°C²" },
  ],
  fromCelsius: "300",
  toCelsius: "1100",
  unit,
  coverageFactor: "2.06",
  rows: Array.from({ length: 9 }, (_, row) => ({
    temperature: String(600 + 100 * row),
    correction: `−${(row / 5).toFixed(1)}`,
    expanded: "1.7",
    remark: row === 8 ? "Outside the accredited scope" : "",
  })),
  statements: ["D(t) = a1·t + a2·t²: invented."],
  plot: {
    curve: [300, 1100].map((celsius) => ({ celsius, value: celsius / 20, expanded: 40 })),
    points: [300, 1100].map((celsius) => ({ celsius, value: celsius / 20 + 3, fitted: celsius / 20 })),
  },
});

/** Every sentence in German, invented: a mark before the English is enough to tell the languages apart. */
const inGerman = (content: CertificateContent): Record<string, string> => {
  const texts: Record<string, string> = {};
  const walk = (value: unknown): void => {
    if (typeof value === "string" && /\p{L}{2}/u.test(value)) texts[value] = `Deutsch: ${value}`;
    else if (typeof value === "object" && value !== null) Object.values(value).forEach(walk);
  };
  const { method, item, conditions, rows, statements, conformity } = content;
  walk([method, item.construction, item.protection, item.condition, item.checks, conditions, statements]);
  walk([conformity, rows.map(({ remark }) => remark), content.deviations, content.standards]);
  walk([content.uncertaintyStatement, content.traceabilityStatement, content.adjustment]);
  walk([content.sampling, content.externalResults, content.laboratory.placeOfPerformance]);
  return texts;
};

export const bilingual: CertificateContent = {
  ...sampleContent,
  laboratory,
  catalogue: { version: "1", sha256: "ab".repeat(32), languages: ["de", "en"] },
  translations: [{ language: "de", texts: inGerman(sampleContent) }],
  // The leading language decides the decimal sign.
  rows: sampleContent.rows.map((row) => ({
    ...row,
    referenceCelsius: row.referenceCelsius.replace(".", ","),
    errorCelsius: row.errorCelsius.replace(".", ","),
    correctionCelsius: row.correctionCelsius.replace(".", ","),
    expandedCelsius: row.expandedCelsius.replace(".", ","),
    coverageFactor: row.coverageFactor.replace(".", ","),
  })),
};

/** One content of every kind that the laboratory issues; each composed as it is, or an invented one changed. */
export const everyContent: Readonly<Record<string, CertificateContent>> = {
  "one sensor, every row with its statement": single,
  "a row not reached, and one without a tolerance": { ...sampleContent, laboratory },
  "an invalid row": {
    ...single,
    rows: single.rows.map((row, at) =>
      at === 2
        ? {
            ...(sampleContent.rows[5] as CertificateRow),
            state: "invalid",
            setpoint: row.setpoint,
            nominalCelsius: row.nominalCelsius,
            remark: "open circuit & < 1 Ω",
          }
        : row,
    ),
  },
  "the room told": {
    ...single,
    run: { ...single.run, room: { celsius: ["23.1", "23.6"], percent: ["41"] } },
  },
  "one row alone": { ...single, rows: single.rows.slice(0, 1) },
  "no statement of conformity": {
    ...single,
    conformity: null,
    rows: single.rows.map((row) => ({
      ...row,
      conformity: { state: "no-statement", tolerance: "", probability: "" },
    })),
  },
  "a zone that is empty": {
    ...single,
    rows: single.rows.map((row, at) => ({
      ...row,
      conformity:
        at === 1
          ? { state: "not-decidable" as const, tolerance: "± 0.50", probability: "40 %" }
          : row.conformity,
    })),
  },
  "setpoints in °F, composed": bundled([
    member("T-9", "as-received", 0.7, {
      order: {
        ...order,
        temperatureUnit: "F",
        setpoints: [
          { typed: "1200", celsius: 648.8888888888889 },
          { typed: "1600", celsius: 871.1111111111111 },
        ],
      },
      points: [648.8888888888889, 871.1111111111111].map((celsius) =>
        measuredPoint({ sensor: "T-9", setpoint: "a", type: "K", celsius, error: 0.7, rule: "guarded" }),
      ),
    }),
  ]),
  "two languages, German first": bilingual,
  "German alone": {
    ...bilingual,
    catalogue: { version: "1", sha256: "ab".repeat(32), languages: ["de"] },
  },
  "an amendment": {
    ...single,
    amends: {
      kind: "amendment",
      number: "C-2026-0003",
      contentHash: "cd".repeat(32),
      reason: "A typing error.",
    },
  },
  "an amendment that says what it changes": {
    ...single,
    amends: {
      kind: "amendment",
      number: "C-2026-0003",
      contentHash: "cd".repeat(32),
      reason: "A typing error.",
      changes: [
        { what: "Serial number", was: "HX-K-4417", now: "HX-K-4471" },
        { what: "Purchase order", was: "PO-1", now: "" },
      ],
    },
  },
  "a replacement that can be checked": {
    ...single,
    amends: {
      kind: "replacement",
      number: "C-2026-0003",
      contentHash: "cd".repeat(32),
      reason: "Other class.",
    },
    authenticity: { address: "https://lab.example/authenticity/abcDEF_-123" },
    log: { sequence: 4711, hash: "ef".repeat(32) },
  },
  "in and outside the scope, external results": {
    ...single,
    laboratory: {
      ...laboratory,
      accreditation: "Accredited by an invented body",
      accreditationNumber: "INV 0000",
    },
    scopeStatement: "† Outside the scope.",
    externalResults:
      "The results of this certificate were obtained by an external provider: Invented, INV 9.",
    rows: single.rows.map((row, at) => ({
      ...row,
      scope: at === 0 ? ("outside" as const) : ("inside" as const),
      ...(at < 2 ? { isExternal: true as const } : {}),
    })),
    standards: single.standards.map((standard, at) => ({
      ...standard,
      ...(at === 0 ? { documentSha256: "12".repeat(32) } : {}),
      ...(at === 1 ? { isExternal: true as const } : {}),
    })),
  },
  "opinions, history, exclusions, simplified, at the customer's site": {
    ...single,
    laboratory: { ...laboratory, placeOfPerformance: "At the customer's site: 7 Works Road" },
    form: "simplified",
    formStatement: "Simplified as agreed with the customer.",
    thermalHistory: ["As told: 200 h at 1000 °C."],
    exclusions: ["At 500 °C 3 readings were set aside: lid opened."],
    opinions: [{ text: "It may last.", basis: "Drift so far.", by: "Odile Marchetti", on: "2026-10-16" }],
    repeats: ["T-1: Measured twice."],
    evidenceStatement: "The evidence file can be had.",
    evidence: { ...single.evidence, exception: "Signed off by the performer, as recorded." },
  },
  "composed in two languages, with budgets and a signature's meaning": {
    ...bundled([member("T-1", "as-received", 0.7, both), member("T-1", "after-anneal", 0.9, both)], {
      asks: { budget: true, evidence: true, language: "en-de" },
    }),
  },
  "composed in two languages, simplified": bundled([member("T-1", "as-received", 0.7)], {
    asks: {
      budget: false,
      evidence: false,
      language: "en-de",
      form: "simplified",
      formAgreement: "mail of 2 May",
    },
  }),
  "a function with a table in °C": { ...single, function: fitted("°C") },
  "a function with a table in °F": { ...single, function: fitted("°F") },
  "two sets, before and after annealing": bundled([
    member("T-1", "as-received", 0.7, both),
    member("T-1", "after-anneal", 0.9, both),
  ]),
  "a lot of one roll, in two languages": bundled(
    (["first", "second"] as const).map((end, at) =>
      member(`T-${end}`, "as-received", at, { build: { lot: "7", roll: "12", end } }),
    ),
    { asks: { budget: false, evidence: false, language: "en-de" } },
  ),
  "a lot with budgets": bundled(
    [0.2, 0.6, 1.1].map((error, at) => member(`T-${at}`, "as-received", error)),
    { asks: { budget: true, evidence: true }, repeats: ["T-1: Measured twice, and so on."] },
  ),
};
