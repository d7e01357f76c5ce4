import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { studentQuantile } from "@/lib/metrology/number/student";
import { sum } from "@/lib/metrology/number/sum";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { truncatedDegreesOfFreedom } from "@/lib/metrology/uncertainty/coverage-factor";
import { standardDeviation } from "@/lib/metrology/uncertainty/distribution";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import { gumH1, gumH1Remembered } from "../vectors/gum-h1";
import { checks } from "./check";

// Inputs of H.1.3, in nm, °C and 1/°C. The model: l = ls + d − ls·(δα·θ + αs·δθ).
const ls = 50_000_623;
const d = 215;
const alphaS = 11.5e-6;
const theta = -0.1;

const rectangular = (halfWidth: number) => standardDeviation({ kind: "rectangular", halfWidth });
const arcsine = standardDeviation({ kind: "arcsine", halfWidth: 0.5 });
const random = 10 / studentQuantile(0.95, 5);
const systematic = standardUncertainty({ kind: "expanded", expanded: 20, coverageFactor: 3 });
const difference = combine([
  { effect: 5.8, degreesOfFreedom: 24 },
  { effect: random, degreesOfFreedom: 5 },
  { effect: systematic, degreesOfFreedom: 8 },
]);
const fromStandard = standardUncertainty({ kind: "expanded", expanded: 75, coverageFactor: 3 });
const fromDeltaAlpha = -ls * theta * rectangular(1e-6);
const fromDeltaTheta = -ls * alphaS * rectangular(0.05);
const length = combine([
  { effect: fromStandard, degreesOfFreedom: 18 },
  { effect: difference.standardUncertainty, degreesOfFreedom: difference.degreesOfFreedom },
  { effect: fromDeltaAlpha, degreesOfFreedom: 50 },
  { effect: fromDeltaTheta, degreesOfFreedom: 2 },
]);

const freedom = truncatedDegreesOfFreedom(length.degreesOfFreedom as number);

export const gumH1Checks = [
  ...checks(gumH1, {
    length: () => sum([ls, d]),
    thetaArcsine: () => arcsine,
    theta: () =>
      combine([
        { effect: 0.2, degreesOfFreedom: null },
        { effect: arcsine, degreesOfFreedom: null },
      ]).standardUncertainty,
    alphaS: () => rectangular(2e-6),
    deltaAlpha: () => rectangular(1e-6),
    deltaTheta: () => rectangular(0.05),
    comparatorRandom: () => random,
    comparatorSystematic: () => systematic,
    difference: () => difference.standardUncertainty,
    differenceFreedom: () => difference.degreesOfFreedom as number,
    fromStandard: () => fromStandard,
    fromDeltaAlpha: () => fromDeltaAlpha,
    fromDeltaTheta: () => Math.abs(fromDeltaTheta),
    combined: () => length.standardUncertainty,
    freedom: () => freedom,
  }),
  ...checks(gumH1Remembered, {
    // The guide multiplies the rounded 2.92 and 32.
    expanded: () =>
      Number(roundHalfEven(studentQuantile(0.99, freedom), 2)) *
      Number(roundHalfEven(length.standardUncertainty, 0)),
  }),
];
