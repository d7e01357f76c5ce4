import { found, type Outcome } from "../../outcome";
import { numericalTolerance } from "./numerical-tolerance";
import type { Interval } from "./summarize";

export type GumValidation = {
  readonly isValid: boolean;
  readonly tolerance: number;
  readonly lowDifference: number;
  readonly highDifference: number;
};

/**
 * Whether the Monte Carlo interval bears the GUM's result out: |y − U − y_low| and |y + U − y_high| both at most δ = ½·10^l
 * (JCGM 101:2008, 8.1 and 8.2). `digits` of u that count. Both for the same coverage probability; for a result that is not
 * symmetric the standard means the shortest interval or the symmetric one, as the user has chosen.
 *
 * All in the result's unit. Refuses what `numericalTolerance` refuses; an end that is NaN is not valid.
 */
export function validateGum(
  gum: { readonly estimate: number; readonly standardUncertainty: number; readonly expanded: number },
  interval: Interval,
  digits: 1 | 2,
): Outcome<GumValidation> {
  const tolerance = numericalTolerance(gum.standardUncertainty, digits);
  if (!tolerance.ok) return tolerance;
  const lowDifference = Math.abs(gum.estimate - gum.expanded - interval.low);
  const highDifference = Math.abs(gum.estimate + gum.expanded - interval.high);
  return found({
    isValid: lowDifference <= tolerance.value && highDifference <= tolerance.value,
    tolerance: tolerance.value,
    lowDifference,
    highDifference,
  });
}
