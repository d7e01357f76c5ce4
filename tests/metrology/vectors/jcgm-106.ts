/** JCGM 106:2012, 7.3.3: one-sided examples, with the probability as published. */
export const jcgm106Examples = [
  {
    name: "example 1, breakdown voltage of a Zener diode, upper limit",
    value: -5.47,
    standardUncertainty: 0.05,
    lower: Number.NEGATIVE_INFINITY,
    upper: -5.4,
    published: "0.92",
    recomputed: 0.91924334,
  },
  {
    name: "example 2, burst strength of a container, lower limit",
    value: 509.7,
    standardUncertainty: 8.6,
    lower: 490,
    upper: Number.POSITIVE_INFINITY,
    published: "0.99",
    recomputed: 0.98900955,
  },
] as const;

/** Table of decision rules: Φ(−2r), the risk of false acceptance at the acceptance limit, U = 2u. */
export const specificRisk: readonly (readonly [guardBandRatio: number, risk: number])[] = [
  [0, 0.5],
  [0.83, 0.0485],
  [1, 0.02275],
  [1.5, 0.00135],
  [3, 9.9e-10],
];
