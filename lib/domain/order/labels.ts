import type { OrderState } from "./transitions";

export const orderStateLabels: Readonly<Record<OrderState, string>> = {
  requested: "Requested",
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

export const urgencies = ["standard", "express"] as const;
export type Urgency = (typeof urgencies)[number];
export const urgencyLabels: Readonly<Record<Urgency, string>> = { standard: "Standard", express: "Express" };

/** Classes of the published standards, or a limit of the customer's. The numbers are classes of IEC 60584-1. */
export const toleranceChoices = ["none", "1", "2", "3", "astm-standard", "astm-special", "own"] as const;
export type ToleranceChoice = (typeof toleranceChoices)[number];
export const toleranceLabels: Readonly<Record<ToleranceChoice, string>> = {
  none: "No tolerance",
  "1": "IEC 60584-1:2013, class 1",
  "2": "IEC 60584-1:2013, class 2",
  "3": "IEC 60584-1:2013, class 3",
  "astm-standard": "ASTM E230/E230M, standard",
  "astm-special": "ASTM E230/E230M, special",
  own: "Customer’s own limit",
};

export const decisionRules = ["none", "simple", "guarded", "guarded-binary", "target-risk"] as const;
export type DecisionRuleKind = (typeof decisionRules)[number];
export const decisionRuleLabels: Readonly<Record<DecisionRuleKind, string>> = {
  none: "No statement of conformity",
  simple: "Simple acceptance: the limit is the tolerance itself",
  guarded: "Guarded acceptance, conditional verdicts between: the limit is the tolerance less a part of U",
  "guarded-binary": "Guarded acceptance, pass or fail only: the limit is the tolerance less a part of U",
  "target-risk": "Target risk, pass or fail only: the limit keeps to a probability of false acceptance",
};

export type AgreedRule = {
  readonly decisionRule: DecisionRuleKind;
  readonly guardBandRatio: number | null;
  readonly falseAcceptancePercent: number | null;
};

/** "Guarded acceptance, w = 1 × U", as one line for lists and certificates' drafts. */
export const decisionRuleText = (agreed: AgreedRule): string => {
  const band = `guard band w = ${agreed.guardBandRatio ?? "?"} × U`;
  switch (agreed.decisionRule) {
    case "none":
      return "No statement of conformity";
    case "simple":
      return "Simple acceptance (guard band w = 0)";
    case "guarded":
      return `Guarded acceptance (${band})`;
    case "guarded-binary":
      return `Guarded acceptance, pass or fail (${band})`;
    case "target-risk":
      return `Target risk, pass or fail (false acceptance at most ${agreed.falseAcceptancePercent ?? "?"} %)`;
  }
};
