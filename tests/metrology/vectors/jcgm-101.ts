import { publishedValues } from "./published-value";

const provenance = "read";
const readAt = "sandialabs/suncal: test/test_examples.py";

/** Trials of each run here; the documents' own runs have as many, so that both ends wander by a few of their errors. */
export const TRIALS = 1_000_000;

const wander = (absolute: number) => ({
  absolute,
  reason: "half the last digit, and what a million trials leave uncertain here and there",
});

/** Sums of four inputs of standard deviation 1; ends of the 95 % interval. */
export const jcgm101Additive = publishedValues(
  "JCGM 101 clause 9",
  { document: "JCGM 101:2008, 9.2.2 and 9.2.3", readAt, provenance },
  {
    normalU: ["table 2: u(y) of four normals", "2.00"],
    normalLow: ["table 2: lower end", "-3.92", wander(0.015)],
    normalHigh: ["table 2: upper end", "3.92", wander(0.015)],
    rectangularU: ["table 3: u(y) of four rectangles", "2.00"],
    rectangularLow: ["table 3: lower end", "-3.88", wander(0.015)],
    rectangularHigh: ["table 3: upper end", "3.88", wander(0.015)],
  },
);

/** y = ln x, x rectangular from 0.1 to 1.1: where linear propagation fails. Shortest 95 % interval. */
export const logarithmExample = publishedValues(
  "NPL DEM-ES-011, logarithm",
  { document: "NPL Report DEM-ES-011 (2006), 9.2, table 9.2", readAt, provenance },
  {
    linearY: ["GUM: y", "-0.511"],
    linearU: ["GUM: u(y)", "0.481"],
    linearHigh: ["GUM: upper end", "0.432"],
    y: ["Monte Carlo: y", "-0.665", wander(0.0025)],
    u: ["Monte Carlo: u(y)", "0.606", wander(0.0025)],
    low: ["Monte Carlo: lower end of the shortest interval", "-1.895", wander(0.006)],
    high: ["Monte Carlo: upper end of the shortest interval", "0.095"],
  },
);

/** Magnitude and phase (rad) of a complex number with u = 0.01 in both parts; r the correlation of the parts. */
export const jcgm102Polar = publishedValues(
  "JCGM 102, magnitude and phase",
  { document: "JCGM 102:2011, 9.3, tables 6 and 7", readAt, provenance },
  {
    magnitude: ["table 6, 0.001, r = 0: magnitude", "0.013"],
    uMagnitude: ["table 6, 0.001, r = 0: u of the magnitude", "0.007"],
    uPhase: ["table 6, 0.001, r = 0: u of the phase", "1.744", wander(0.005)],
    magnitudeCorrelated: ["table 7, 0.001, r = 0.9: magnitude", "0.012"],
    uMagnitudeCorrelated: ["table 7, 0.001, r = 0.9: u of the magnitude", "0.008"],
    phaseCorrelated: ["table 7, 0.001, r = 0.9: phase", "-0.556", wander(0.006)],
    uPhaseCorrelated: ["table 7, 0.001, r = 0.9: u of the phase", "1.599", wander(0.005)],
    magnitudeFurther: ["table 7, 0.010, r = 0.9: magnitude", "0.015"],
    uMagnitudeFurther: ["table 7, 0.010, r = 0.9: u of the magnitude", "0.008"],
    phaseFurther: ["table 7, 0.010, r = 0.9: phase", "-0.343", wander(0.004)],
    uPhaseFurther: ["table 7, 0.010, r = 0.9: u of the phase", "0.903", wander(0.004)],
  },
);
