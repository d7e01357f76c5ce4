import type { ReportForm } from "../order/options";
import { ok, type Result, refuse } from "../refusal";

/** Several sensors on one certificate: of one line, and only as the order asks. `lineIds`: of each sensor; null = not in the run. */
export const decideOneLot = (lineIds: readonly (string | null)[], report: ReportForm): Result<null> => {
  if (lineIds.some((id) => id === null || id !== lineIds[0]))
    return refuse(
      "rule",
      "One certificate speaks of sensors of one order line only. Nothing was signed off.",
    );
  return report === "per-lot"
    ? ok(null)
    : refuse("rule", "The order asks for one certificate for each sensor. Nothing was signed off.");
};
