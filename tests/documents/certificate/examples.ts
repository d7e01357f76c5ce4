import type {
  CertificateContent,
  CertificateFunction,
  CertificateRow,
  CertificateSet,
} from "@/lib/domain/certificate/content";
import { sampleContent } from "./sample-content";

/** Invented certificates from one page to many. Laboratories, customers, items, numbers and addresses are ours. */
const token = "3yXw0Zk1Qb7mT5rVh2LsNcJdFgPaEiUoYtRqWxMzKvA";
export const authenticity = { address: `https://harrowvale.example/authenticity/${token}` };
const minus = (text: string): string => text.replace("-", "−");

export const rowOf = (
  celsius: number,
  error: number,
  expanded: number,
  tolerance: number,
): CertificateRow => {
  const seebeck = 40;
  const emf = Math.round(celsius * 41.3);
  const printed = minus(error.toFixed(1));
  return {
    state: "measured",
    setpoint: `${celsius} °C`,
    nominalCelsius: String(celsius),
    referenceCelsius: (celsius + 0.3).toFixed(1),
    emfMicrovolt: `${Math.floor(emf / 1000)} ${String(emf % 1000).padStart(3, "0")}`,
    deviationMicrovolt: minus(String(Math.round(error * seebeck))),
    expandedMicrovolt: String(Math.round(expanded * seebeck)),
    errorCelsius: printed,
    correctionCelsius: printed.startsWith("−") ? printed.slice(1) : `−${printed}`,
    expandedCelsius: expanded.toFixed(1),
    coverageFactor: "2.00",
    plot: { celsius, errorCelsius: error, expandedCelsius: expanded, toleranceCelsius: tolerance },
    conformity: {
      state: Math.abs(error) + expanded <= tolerance ? "pass" : "conditional-pass",
      tolerance: `± ${tolerance.toFixed(1)}`,
      probability: Math.abs(error) + expanded <= tolerance ? "> 99.9 %" : "97.2 %",
    },
    remark: "",
  };
};

const setpoints = [300, 400, 500, 600, 700, 800, 900, 1000];
const rowsOf = (offset: number): CertificateRow[] =>
  setpoints.map((celsius, at) =>
    rowOf(celsius, offset + Math.sin(at + offset) / 2, 0.7 + at / 10, Math.max(1.5, celsius * 0.004)),
  );

const setOf = (
  serial: string,
  tag: string,
  kind: CertificateSet["kind"],
  offset: number,
  material?: string,
): CertificateSet => ({
  kind,
  item: { ...sampleContent.item, serial, tag, ...(material ? { material } : {}) },
  receivedOn: sampleContent.receivedOn,
  performedFrom: sampleContent.performedFrom,
  performedTo: sampleContent.performedTo,
  run: { ...sampleContent.run, number: kind === "as-received" ? "R-2026-0003" : "R-2026-0005" },
  conditions: sampleContent.conditions,
  rows: rowsOf(offset),
  standards: sampleContent.standards,
  deviations: [],
  performedBy: sampleContent.performedBy,
  evidence: { engineVersion: "1.0.0", inputsDigest: "b".repeat(64), evaluation: 1 },
});

const withSets = (sets: CertificateSet[], more: Partial<CertificateContent>): CertificateContent => ({
  ...sampleContent,
  ...(sets[0] as CertificateSet),
  performedBy: sampleContent.performedBy,
  evidence: { ...sampleContent.evidence, inputsDigest: "b".repeat(64), evaluation: 1 },
  deviations: [],
  sets,
  authenticity,
  ...more,
});

export const fitted = (remark: (row: number) => string): CertificateFunction => ({
  degree: 2,
  isThroughZero: true,
  coefficients: [
    { power: 0, value: "0e+0", unit: "µV" },
    { power: 1, value: "-5.93e-2", unit: "µV/°C" },
    { power: 2, value: "8.71e-5", unit: "µV/°C²" },
  ],
  fromCelsius: "300",
  toCelsius: "1100",
  unit: "°C",
  coverageFactor: "2.06",
  rows: Array.from({ length: 81 }, (_, row) => ({
    temperature: String(300 + 10 * row),
    correction: `−${(0.1 + row / 50).toFixed(1)}`,
    expanded: "1.7",
    remark: remark(row),
  })),
  statements: [
    "D(t) = a1·t + a2·t²: deviation of the emf in µV from the reference function of the type, t in °C; it holds from 300 °C to 1100 °C.",
    "Correction: to be added to the indication. U is with k = 2.06 and is rounded up.",
  ],
  plot: {
    curve: Array.from({ length: 33 }, (_, at) => {
      const celsius = 300 + 25 * at;
      return { celsius, value: -0.0593 * celsius + 8.71e-5 * celsius ** 2, expanded: 20 + celsius / 50 };
    }),
    points: [300, 500, 700, 900, 1100].map((celsius) => {
      const value = -0.0593 * celsius + 8.71e-5 * celsius ** 2;
      return { celsius, value: value + (celsius % 400 ? 4 : -5), fitted: value };
    }),
  },
});

const budgetLines = [
  { label: "Inhomogeneity of the item", distribution: "rectangular", effectCelsius: "0.41", share: "48 %" },
  { label: "Reference calibration", distribution: "normal", effectCelsius: "0.30", share: "26 %" },
  {
    label: "Difference between the places",
    distribution: "rectangular",
    effectCelsius: "0.24",
    share: "17 %",
  },
  { label: "Voltmeter calibration", distribution: "normal", effectCelsius: "0.12", share: "4 %" },
  { label: "Scatter of the readings", distribution: "Student's t", effectCelsius: "0.03", share: "< 1 %" },
];

const shortRows = [rowOf(300, -0.2, 0.8, 1.5), rowOf(600, 0.5, 1, 2.4), rowOf(900, 1.2, 1.4, 3.6)];

/** One sensor at three points: the least there is. */
export const short: CertificateContent = {
  ...sampleContent,
  number: "C-2026-0008",
  rows: shortRows,
  deviations: [],
  authenticity,
};

export const simplified: CertificateContent = {
  ...short,
  number: "C-2026-0009",
  item: { ...short.item, checks: [] },
  conditions: short.conditions.slice(0, 1),
  form: "simplified",
  formStatement:
    "Simplified certificate, as agreed with Ines Höfle on 2026-10-07 (ISO/IEC 17025:2017, 7.8.1.3): what it leaves out is kept by the laboratory and can be had on request.",
};

export const amendment: CertificateContent = {
  ...sampleContent,
  number: "C-2026-0010",
  rows: sampleContent.rows.map((row, at) => ({
    ...row,
    ...(at === 1 ? { isExternal: true as const } : {}),
    ...(row.conformity.tolerance
      ? { conformity: { ...row.conformity, acceptance: ["0.75", "1.04", "1.6", "2.2"][at] } }
      : {}),
  })),
  authorisedBy: {
    ...sampleContent.authorisedBy,
    at: "2026-10-16T08:30:00.000Z",
    meaning: "I have reviewed these results and authorise their release.",
  },
  externalResults: "From Invented Metrology (accreditation INV 9): the results marked.",
  amends: {
    kind: "replacement",
    number: "C-2026-0007",
    contentHash: "5f".repeat(32),
    reason: "The serial number was printed as HX-K-4417; the item bears HX-K-4471.",
  },
  thermalHistory: [
    "Told at intake: 120 h in use below 900 °C.",
    "Here: 31 h in the furnace, highest 1100 °C.",
  ],
  exclusions: ["At 700 °C readings 14 to 19 were set aside: the voltmeter was out of range."],
  opinions: [
    {
      text: "The drift since the last calibration is that of a sensor near the end of its life above 1000 °C.",
      basis: "Comparison with C-2025-0311, results at 900 °C and 1100 °C.",
      by: "Odile Marchetti",
      on: "2026-10-16",
    },
  ],
  authenticity,
  log: { sequence: 40_317, hash: "9c4e".repeat(16) },
};

const twelve = Array.from({ length: 12 }, (_, at) =>
  setOf(
    `HX-K-${4471 + at}`,
    `T-${String(42 + at).padStart(6, "0")}`,
    "as-received",
    at / 10 - 0.4,
    `Lot 7, roll ${at + 1}`,
  ),
);

export const lotOfTwelve: CertificateContent = withSets(twelve, {
  number: "C-2026-0011",
  lot: {
    rows: setpoints.map((celsius) => ({
      setpoint: `${celsius} °C`,
      items: 12,
      averageErrorCelsius: "0.3",
      smallestErrorCelsius: "−0.6",
      largestErrorCelsius: "1.2",
      halfRangeCelsius: "0.9",
    })),
    statement: "Of the items measured alone: nothing is stated of the rest of the lot or roll.",
  },
});

export const twoSets: CertificateContent = withSets(
  [
    { ...setOf("HX-K-4471", "T-000042", "as-received", 0.6), function: fitted(() => "") },
    {
      ...setOf("HX-K-4471", "T-000042", "after-anneal", 0.1),
      function: fitted((row) => (row > 70 ? "Outside the accredited scope" : "")),
    },
  ],
  {
    number: "C-2026-0012",
    changes: [
      {
        tag: "T-000042",
        rows: setpoints.map((celsius) => ({
          setpoint: `${celsius} °C`,
          changeCelsius: "−0.5",
          expandedCelsius: "0.4",
        })),
        statement: "After annealing minus as received; U of the change leaves out what both sets share.",
      },
    ],
    adjustment: "Annealed between the sets: 2 h at 1100 °C in a tube furnace in air on 2026-10-14.",
    budgets: setpoints.map((celsius) => ({
      tag: "T-000042",
      setpoint: `${celsius} °C`,
      lines: budgetLines,
      combinedCelsius: "0.59",
      coverageFactor: "2.00",
      degreesOfFreedom: "210",
    })),
    evidenceStatement: "The evidence file with every reading is attached to this document.",
  },
);

export const fahrenheit: CertificateContent = {
  ...short,
  number: "C-2026-0013",
  rows: shortRows.map((row, at) => ({
    ...row,
    setpoint: `${[600, 1100, 1650][at]} °F`,
    conformity: { state: "no-statement", tolerance: "", probability: "" },
  })),
  conformity: null,
};

const german: Readonly<Record<string, string>> = {
  "Calibration certificate": "Kalibrierschein",
  "Metal sheath": "Metallmantel",
  "As described in the order": "Wie im Auftrag beschrieben",
  "At the laboratory's address": "Unter der Anschrift des Laboratoriums",
  "Polarity as marked": "Polarität wie gekennzeichnet",
  "Comparison in a tube furnace": "Vergleich im Rohrofen",
  "The thermocouple was compared with reference thermocouples in a tube furnace.":
    "Das Thermopaar wurde im Rohrofen mit Normal-Thermopaaren verglichen.",
  "Temperatures are on the International Temperature Scale of 1990 (ITS-90).":
    "Temperaturen nach der Internationalen Temperaturskala von 1990 (ITS-90).",
  "U is the expanded uncertainty with the coverage factor k printed in the same row.":
    "U ist die erweiterte Messunsicherheit mit dem in derselben Zeile genannten Erweiterungsfaktor k.",
  "Guarded acceptance: acceptance limit = tolerance limit − 1 × U.":
    "Annahme mit Sicherheitsabstand: Annahmegrenze = Toleranzgrenze − 1 × U.",
  "For a pass the probability of false acceptance is at most 2.5 %.":
    "Bei „Bestanden“ beträgt die Wahrscheinlichkeit einer falschen Annahme höchstens 2,5 %.",
  "The results are traceable to the SI through the calibrations listed.":
    "Die Ergebnisse sind über die aufgeführten Kalibrierungen auf das SI rückgeführt.",
  "None made.": "Keine vorgenommen.",
  "Not applicable: the laboratory took no sample.":
    "Nicht zutreffend: Das Laboratorium hat keine Probe genommen.",
  "The results relate only to the item described on this certificate.":
    "Die Ergebnisse beziehen sich nur auf den beschriebenen Gegenstand.",
  Signatory: "Zeichnungsberechtigte",
};

/** English binds, German below it, lighter. */
export const bilingual: CertificateContent = {
  ...amendment,
  number: "C-2026-0014",
  catalogue: { version: "1", sha256: "c".repeat(64), languages: ["en", "de"] },
  translations: [{ language: "de", texts: { ...german } }],
};
