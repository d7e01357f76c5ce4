import { urgencyLabels } from "./labels";
import { type OrderQuery, orderOnly, orderOnlyLabels } from "./list-query";
import { type RuleSet, ruleSetLabels } from "./rule-set";

/** What a list of orders is narrowed by, in the words of its filters: so that an empty list can say what it looked for. */
export const orderAskedWords = (query: OrderQuery, customer: string | null): readonly string[] => {
  const only = orderOnly.find((name) => name === query.only);
  return [
    ...(query.q ? [`“${query.q}”`] : []),
    ...(only ? [orderOnlyLabels[only]] : []),
    ...(query.urgency ? [urgencyLabels[query.urgency as keyof typeof urgencyLabels]] : []),
    ...(query.rules ? [ruleSetLabels[query.rules as RuleSet] ?? query.rules] : []),
    ...(query.customer ? [customer ?? "Customer"] : []),
    ...(query.from ? [`Recorded from ${query.from}`] : []),
    ...(query.to ? [`Recorded until ${query.to}`] : []),
    ...(query.due ? [`Promised by ${query.due}`] : []),
  ];
};
