import { publishedValues } from "./published-value";

/** Table H.6: reading t and observed correction b of a thermometer, both in °C. */
export const gumH3Readings: readonly { readonly t: number; readonly b: number }[] = [
  { t: 21.521, b: -0.171 },
  { t: 22.012, b: -0.169 },
  { t: 22.512, b: -0.166 },
  { t: 23.003, b: -0.159 },
  { t: 23.507, b: -0.164 },
  { t: 23.999, b: -0.165 },
  { t: 24.513, b: -0.156 },
  { t: 25.002, b: -0.157 },
  { t: 25.503, b: -0.159 },
  { t: 26.01, b: -0.161 },
  { t: 26.511, b: -0.16 },
];

/** The line b = y1 + y2·(t − 20 °C); °C and pure numbers. */
export const gumH3 = publishedValues(
  "GUM H.3, thermometer calibration",
  {
    document: "JCGM 100:2008, annex H.3",
    readAt: "MSLNZ/GTC: docs/API/GUM_H3.rst",
    provenance: "read",
  },
  {
    y1: ["H.3.3: intercept y1", "-0.1712"],
    uY1: ["H.3.3: s(y1)", "0.0029"],
    y2: ["H.3.3: slope y2", "0.00218"],
    uY2: ["H.3.3: s(y2)", "0.00067"],
    r: ["H.3.3: r(y1, y2)", "-0.93"],
    sumOfSquares: ["sum of the squared residuals as GTC prints it", "0.000110096583109"],
    correction: ["H.3.4: b(30 °C)", "-0.1494"],
    uCorrection: ["H.3.4: u of b(30 °C)", "0.0041"],
  },
);

/** Not in the text that was read. */
export const gumH3Remembered = publishedValues(
  "GUM H.3, thermometer calibration",
  { document: "JCGM 100:2008, annex H.3", readAt: "", provenance: "from-memory" },
  { s: ["H.3.3: s of a single correction", "0.0035"], freedom: ["H.3.4: degrees of freedom", "9"] },
);
