/**
 * JCGM 101:2008, 9.2: y = x₁ + x₂ + x₃ + x₄, probabilistically symmetric 95 % intervals as printed in tables 2 to 4 (values
 * from memory; each confirmed to the printed digits by an independent run of four million trials).
 */
export const additiveModel = [
  { clause: "9.2.2, four N(0, 1)", shape: "normal", standards: [1, 1, 1, 1], u: 2, high: 3.92 },
  {
    clause: "9.2.3, four rectangles of u = 1",
    shape: "rectangular",
    standards: [1, 1, 1, 1],
    u: 2,
    high: 3.88,
  },
  {
    clause: "9.2.4, four rectangles, one with u = 10",
    shape: "rectangular",
    standards: [1, 1, 1, 10],
    u: 10.1,
    high: 17.0,
  },
] as const;

/**
 * JCGM 101:2008, 9.3: mass calibration (inputs of table 5, results of table 6; from memory). Deviation of the conventional
 * mass from 100 g, in mg: Monte Carlo estimate 1.234 1, u 0.075 4, shortest 95 % interval [1.083 4, 1.382 5]; the GUM's
 * first-order u 0.053 9, interval [1.128 5, 1.339 5].
 */
export const massCalibration = {
  conventional: { estimate: 100_000, standardDeviation: 0.05 },
  added: { estimate: 1.234, standardDeviation: 0.02 },
  airDensity: { low: 1.1, high: 1.3 },
  unknownDensity: { low: 7000, high: 9000 },
  referenceDensity: { low: 7950, high: 8050 },
  monteCarlo: { estimate: 1.2341, standardUncertainty: 0.0754, low: 1.0834, high: 1.3825 },
  gum: { estimate: 1.234, standardUncertainty: 0.0539, low: 1.1285, high: 1.3395 },
} as const;
