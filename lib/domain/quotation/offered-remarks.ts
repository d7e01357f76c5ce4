import { offeredFindings } from "../order/contract-review";
import { notDone, type PossiblePoint } from "../order/not-done";
import { type RuleSet, ruleSetLabels, ruleSetPhrases, ruleSets } from "../order/rule-set";
import type { OfferedOrder } from "./offered-order";

/** What is offered and cannot be done as things stand: a customer who agrees to it agrees to that as well. */
export const notDoneRemarks = (points: readonly PossiblePoint[]): string[] =>
  notDone(points).map(
    ({ position, setpoints, why }) =>
      `Cannot be done as things stand: line ${position}: ${setpoints.join(", ")}. ${why} Please agree another way with us.`,
  );

const ruleSetOf = ({ ruleSet }: OfferedOrder): RuleSet => ruleSets.find((one) => one === ruleSet) ?? "none";

/** The set of rules the work is done under, and what the review finds that the customer is told. */
export const agreedRemarks = (order: OfferedOrder): string[] => {
  const ruleSet = ruleSetOf(order);
  return [
    ...(ruleSet === "none"
      ? []
      : [`Done under “${ruleSetLabels[ruleSet]}”. ${ruleSetPhrases[ruleSet].join(". ")}.`]),
    ...offeredFindings({ ...order, ruleSet }),
  ];
};
