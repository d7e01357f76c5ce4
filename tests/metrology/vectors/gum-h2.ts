import { publishedValues } from "./published-value";

/** Table H.2: five simultaneous readings of V in volt, I in milliampere and φ in radian. */
export const gumH2Readings = {
  V: [5.007, 4.994, 5.005, 4.99, 4.999],
  I: [19.663, 19.639, 19.64, 19.685, 19.678],
  phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
} as const;

/** V in volt, I in ampere, φ in radian, R, X and Z in ohm. */
export const gumH2 = publishedValues(
  "GUM H.2, resistance and reactance",
  {
    document: "JCGM 100:2008, annex H.2",
    readAt: "sandialabs/suncal: test/test_examples.py, test/test_GUMH2.csv; MSLNZ/GTC: docs/API/GUM_H2.rst",
    provenance: "read",
  },
  {
    V: ["table H.2: mean of V", "4.9990"],
    I: ["table H.2: mean of I", "19.661E-3"],
    phi: ["table H.2: mean of φ", "1.04446"],
    uV: ["table H.2: s of the mean of V", "3.2E-3"],
    uI: ["table H.2: s of the mean of I", "9.5E-6"],
    uPhi: ["table H.2: s of the mean of φ", "7.5E-4"],
    rVI: ["table H.2: r(V, I)", "-0.36"],
    rVPhi: ["table H.2: r(V, φ)", "0.86"],
    rIPhi: ["table H.2: r(I, φ)", "-0.65"],
    R: ["table H.4: R", "127.732"],
    X: ["table H.4: X", "219.847"],
    Z: ["table H.4: Z", "254.260"],
    uR: ["table H.4: u_c(R)", "0.071"],
    uX: ["table H.4: u_c(X)", "0.295", { absolute: 1e-3, reason: "its own table H.2 gives 0.29558 in full" }],
    uZ: ["table H.4: u_c(Z)", "0.236"],
  },
);
