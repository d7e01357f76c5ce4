import { failedChecks, type IntakeFinding } from "../intake/findings";
import type { Condition } from "./labels";

type Described = { readonly condition: Condition; readonly conditionNote: string };

/**
 * The condition as it is recorded: a check outside its limit is a deviation too, whatever was chosen on the form
 * (ISO/IEC 17025:2017, 7.4.3).
 */
export const conditionWith = (described: Described, findings: readonly IntakeFinding[]): Described => {
  const failed = failedChecks(findings);
  if (failed.length === 0 || described.condition === "deviates") return described;
  return { condition: "deviates", conditionNote: described.conditionNote || failed.join("; ").slice(0, 400) };
};

/** What the customer should hear of before the sensor is loaded (7.4.3), each once. */
export const intakeFindings = (
  described: Described,
  findings: readonly IntakeFinding[],
): readonly string[] => {
  const failed = failedChecks(findings);
  const note = described.conditionNote;
  const isSaidByChecks = failed.length > 0 && note === failed.join("; ").slice(0, 400);
  return [
    ...(described.condition === "deviates" && !isSaidByChecks ? [`condition deviates (${note})`] : []),
    ...failed,
  ];
};
