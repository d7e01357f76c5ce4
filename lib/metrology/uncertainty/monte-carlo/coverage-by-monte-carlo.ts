import { found, type Outcome, refused } from "../../outcome";
import type { Coverage } from "../coverage";
import type { MonteCarloResult } from "./monte-carlo";

/**
 * k = U/u_c, where y ± U reaches the farther end of the probabilistically symmetric interval (JCGM 101:2008, 7.7.2): for a
 * linear budget both ends are equally far but for sampling. `estimate` is the y that is reported and u_c the budget's, both in
 * the result's unit; k is a pure number.
 *
 * Refuses: u_c not above 0 ("not-applicable").
 */
export function coverageByMonteCarlo(
  result: MonteCarloResult,
  estimate: number,
  standardUncertainty: number,
): Outcome<Extract<Coverage, { kind: "monte-carlo" }>> {
  if (!(standardUncertainty > 0)) {
    return refused(
      "not-applicable",
      `A combined uncertainty of ${standardUncertainty} has no coverage factor.`,
    );
  }
  const { symmetric, probability, trials, seed } = result;
  const expanded = Math.max(estimate - symmetric.low, symmetric.high - estimate);
  return found({ kind: "monte-carlo", factor: expanded / standardUncertainty, probability, trials, seed });
}
