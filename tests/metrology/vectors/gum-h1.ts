import { publishedValues } from "./published-value";

/** Lengths in nm; θ in °C, α in 1/°C. */
export const gumH1 = publishedValues(
  "GUM H.1, end gauge",
  {
    document: "JCGM 100:2008, annex H.1",
    readAt: "MSLNZ/GTC: docs/API/GUM_H1.rst; sandialabs/suncal: test/test_examples.py, test/ex_endgauge.yaml",
    provenance: "read",
  },
  {
    length: ["H.1.2: l", "50000838"],
    thetaArcsine: ["H.1.3.4: u of the cycle, 0.5 °C arcsine", "0.35"],
    theta: ["table H.1: u(θ)", "0.41"],
    alphaS: ["table H.1: u(αs), ±2e-6 rectangular", "1.2E-6"],
    deltaAlpha: ["table H.1: u(δα), ±1e-6 rectangular", "0.58E-6"],
    deltaTheta: ["table H.1: u(δθ), ±0.05 °C rectangular", "0.029"],
    comparatorRandom: ["H.1.3.2: u(d1) from U95 = 0.01 µm, ν = 5", "3.9"],
    comparatorSystematic: ["H.1.3.2: u(d2), 0.02 µm at 3 sigma", "6.7"],
    difference: ["table H.1: u(d)", "9.7"],
    differenceFreedom: ["H.1.6: ν_eff(d)", "25.6"],
    fromStandard: ["table H.1: contribution of l_s", "25"],
    fromDeltaAlpha: ["table H.1: contribution of δα", "2.9"],
    fromDeltaTheta: ["table H.1: contribution of δθ", "16.6"],
    combined: ["H.1.4: u_c(l)", "32"],
    freedom: ["H.1.6: ν_eff(l), cut to a whole number", "16"],
  },
);

/** Not in the text that was read. */
export const gumH1Remembered = publishedValues(
  "GUM H.1, end gauge",
  { document: "JCGM 100:2008, annex H.1", readAt: "", provenance: "from-memory" },
  { expanded: ["H.1.6: U99, nm", "93"] },
);
