import type { OrderState } from "./transitions";

export const orderStateLabels: Readonly<Record<OrderState, string>> = {
  recorded: "Recorded",
  accepted: "Accepted",
  completed: "Completed",
  cancelled: "Cancelled",
};

export const protections = ["metal-sheath", "alumina-sheath", "bare-wire", "other"] as const;
export type Protection = (typeof protections)[number];
export const protectionLabels: Readonly<Record<Protection, string>> = {
  "metal-sheath": "Metal sheath",
  "alumina-sheath": "Closed alumina sheath",
  "bare-wire": "Bare wires",
  other: "Other",
};

export const temperatureUnits = ["C", "F"] as const;
export type TemperatureUnit = (typeof temperatureUnits)[number];
export const temperatureUnitLabels: Readonly<Record<TemperatureUnit, string>> = { C: "°C", F: "°F" };

/** The one standard whose classes an order can ask for so far. */
export const toleranceStandard = "IEC 60584-1:2013";
export const toleranceChoices = ["none", "1", "2", "3"] as const;
export type ToleranceChoice = (typeof toleranceChoices)[number];
export const toleranceLabels: Readonly<Record<ToleranceChoice, string>> = {
  none: "No class",
  "1": "Class 1",
  "2": "Class 2",
  "3": "Class 3",
};

export const decisionRules = ["none", "simple", "guarded"] as const;
export type DecisionRuleKind = (typeof decisionRules)[number];
export const decisionRuleLabels: Readonly<Record<DecisionRuleKind, string>> = {
  none: "No statement of conformity",
  simple: "Simple acceptance: the limit is the tolerance itself",
  guarded: "Guarded acceptance: the limit is the tolerance less a part of U",
};

/** "Guarded acceptance, w = 1 × U", as one line for lists and certificates' drafts. */
export const decisionRuleText = (rule: DecisionRuleKind, guardBandRatio: number | null): string => {
  if (rule === "none") return "No statement of conformity";
  if (rule === "simple") return "Simple acceptance (guard band w = 0)";
  return `Guarded acceptance (guard band w = ${guardBandRatio ?? "?"} × U)`;
};
