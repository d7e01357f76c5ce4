import { SQRT_3 } from "@/lib/metrology/number/constants";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { type CoverageEffect, chooseCoverage, dominantPolicy } from "@/lib/metrology/uncertainty/coverage";
import { eaDominantRemembered } from "../vectors/ea-4-02-s9";
import { checks } from "./check";
import { unwrap } from "./unwrap";

const rectangle = (halfWidth: number): CoverageEffect => ({
  effect: halfWidth / SQRT_3,
  degreesOfFreedom: null,
  distribution: "rectangular",
});
const normal = (effect: number): CoverageEffect => ({
  effect,
  degreesOfFreedom: null,
  distribution: "normal",
});

function result(effects: readonly CoverageEffect[]): { readonly u: number; readonly k: number } {
  const combined = combine(effects);
  const coverage = unwrap(chooseCoverage(effects, [], combined, dominantPolicy));
  return { u: combined.standardUncertainty, k: coverage.factor };
}

// S9, in V: resolution ±0.05, calibrator U = 0.002 at k = 2, its other influences ±0.011.
const multimeter = result([rectangle(0.05), normal(0.001), rectangle(0.011)]);
// S10, in mm: mechanical effects ±0.05, resolution ±0.025, block ±0.0008, temperature ±2 °C at 150 mm.
const calliper = result([rectangle(0.05), rectangle(0.025), rectangle(0.0008), rectangle(0.0035)]);

export const eaS9Checks = checks(eaDominantRemembered, {
  multimeterFactor: () => multimeter.k,
  multimeterExpanded: () => multimeter.k * multimeter.u,
  calliperFactor: () => calliper.k,
  calliperExpanded: () => calliper.k * calliper.u,
});
