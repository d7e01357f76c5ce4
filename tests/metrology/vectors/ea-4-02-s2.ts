import { publishedValues } from "./published-value";

/** Masses in g; shares of u_c² in percent. */
export const eaS2 = publishedValues(
  "EA-4/02 S2, weight of 10 kg",
  {
    document: "EA-4/02, supplement 1, S2: calibration of a weight of nominal value 10 kg",
    readAt: "http://www.metrodata.de/examples/s02_en.html",
    provenance: "read",
  },
  {
    mS: ["budget, u of the standard", "0.0225"],
    drift: ["budget, u of the drift, ±15 mg", "8.66E-3"],
    eccentricity: ["budget, u of eccentricity and magnetism, ±10 mg", "5.77E-3"],
    buoyancy: ["budget, u of air buoyancy, ±10 mg", "5.77E-3"],
    value: ["budget, m_X", "10000.025"],
    combined: ["budget, u(m_X)", "0.0291"],
    expanded: ["budget, U at k = 2", "0.058"],
    shareStandard: ["index of the standard, %", "59.6"],
    shareDrift: ["index of the drift, %", "8.8"],
    shareDifference: ["index of the observed difference, %", "23.7"],
    shareEccentricity: ["index of eccentricity and magnetism, %", "3.9"],
    shareBuoyancy: ["index of air buoyancy, %", "3.9"],
  },
);
