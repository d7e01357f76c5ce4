import { refusedState } from "@/lib/web/form-action";
import { flag, rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { emptyLine, lineFields } from "./line-draft";

const lines = (data: FormData) => {
  const all = rows(data, "lines", lineFields);
  // A line added and left empty is no line; choices alone do not make one.
  const last = all.findLastIndex((line) => line.construction || line.setpoints);
  return all.slice(0, Math.max(last + 1, 1));
};

/** What the order's fields say, for recording, amending, taking over and changing. */
export const orderTerms = (data: FormData) => ({
  purchaseOrder: text(data, "purchaseOrder"),
  decisionRule: text(data, "decisionRule"),
  guardBandRatio: text(data, "guardBandRatio"),
  falseAcceptancePercent: text(data, "falseAcceptancePercent"),
  decisionRuleAgreedBy: text(data, "decisionRuleAgreedBy"),
  decisionRuleAgreedOn: text(data, "decisionRuleAgreedOn"),
  uncertaintyDigits: text(data, "uncertaintyDigits"),
  note: text(data, "note"),
  urgency: text(data, "urgency") || undefined,
  ruleSet: text(data, "ruleSet") || undefined,
  lines: lines(data),
});

/** The four questions of the contract review, with their remarks. */
export const reviewAnswers = (data: FormData) => ({
  requirementsUnderstood: flag(data, "requirementsUnderstood"),
  capabilityAndResources: flag(data, "capabilityAndResources"),
  externalProviders: text(data, "externalProviders"),
  methodSuitable: flag(data, "methodSuitable"),
  requirementsUnderstoodRemark: text(data, "requirementsUnderstoodRemark"),
  capabilityAndResourcesRemark: text(data, "capabilityAndResourcesRemark"),
  externalProvidersRemark: text(data, "externalProvidersRemark"),
  methodSuitableRemark: text(data, "methodSuitableRemark"),
});

/** Only without JavaScript: the same form again with one line more. */
export const oneLineMore = (data: FormData): FormState => {
  const count = rows(data, "lines", lineFields).length;
  for (const field of lineFields) data.set(`lines.${count}.${field}`, emptyLine[field]);
  return refusedState(data, "Nothing is stored yet: one line was added.");
};
