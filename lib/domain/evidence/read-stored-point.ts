import { TWO_SIGMA_PROBABILITY } from "@/lib/metrology/uncertainty/coverage-factor";
import { budgetLines, excludedBy, type LineKey } from "./budget-lines";
import type { Budget, EvaluatedContribution, EvaluatedPoint, MeasuredPoint } from "./evaluation";

/** A point as an engine before version 2 stored it. */
type Earlier = Omit<
  MeasuredPoint,
  "coverage" | "scope" | "shared" | "zeroMicrovolt" | "temperatureBudget" | "emfBudget"
> & {
  readonly temperatureBudget: EarlierBudget;
  readonly emfBudget: EarlierBudget;
};
type EarlierBudget = Omit<Budget, "contributions"> & {
  readonly contributions: readonly Omit<EvaluatedContribution, "kind" | "variance" | "share" | "excludes">[];
};

const isLineKey = (key: string): key is LineKey => Object.hasOwn(budgetLines, key);

/**
 * A stored point as it is shown: what an earlier engine did not store is filled in from what it did. The
 * stored text itself, which hashes rest on, stays as it is.
 */
export function readStoredPoint(text: string): EvaluatedPoint {
  const point = JSON.parse(text) as EvaluatedPoint | Earlier;
  if (point.state !== "measured" || "coverage" in point) return point as EvaluatedPoint;
  const slope = point.seebeckMicrovoltPerCelsius;
  const whole = point.combinedMicrovolt * point.combinedMicrovolt;
  const filled = (budget: EarlierBudget, scale: number): Budget => ({
    ...budget,
    contributions: budget.contributions.map((line) => {
      const variance = line.effect * line.effect;
      return {
        ...line,
        kind: line.key === "furnace.temperature" ? "stage" : "input",
        variance,
        share: (variance * scale) / whole,
        excludes: isLineKey(line.key) ? excludedBy(line.key) : [],
      };
    }),
  });
  return {
    ...point,
    temperatureBudget: filled(point.temperatureBudget, slope * slope),
    emfBudget: filled(point.emfBudget, 1),
    shared: [],
    zeroMicrovolt: 0,
    coverage: {
      policy: "student",
      method: "student",
      probability: TWO_SIGMA_PROBABILITY,
      criterion: "Student's t at 95.45 % with the effective degrees of freedom",
    },
    scope: { state: "not-stated", capabilityCelsius: null, isRaised: false, source: null },
  };
}
