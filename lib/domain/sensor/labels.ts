import type { SensorState } from "./transitions";

export const sensorStateLabels: Readonly<Record<SensorState, string>> = {
  received: "Received",
  loaded: "Loaded",
  measured: "Measured",
  evaluated: "Evaluated",
  "in-review": "In review",
  issued: "Issued",
  collected: "Collected",
};

export const conditions = ["as-described", "deviates"] as const;
export type Condition = (typeof conditions)[number];
export const conditionLabels: Readonly<Record<Condition, string>> = {
  "as-described": "As described in the order",
  deviates: "Deviates from the order or is damaged",
};

export const polarities = ["not-checked", "ok", "reversed"] as const;
export type Polarity = (typeof polarities)[number];
export const polarityLabels: Readonly<Record<Polarity, string>> = {
  "not-checked": "Not checked",
  ok: "Correct",
  reversed: "Reversed",
};

export const typeChecks = ["not-checked", "ok", "other-type"] as const;
export type TypeCheck = (typeof typeChecks)[number];
export const typeCheckLabels: Readonly<Record<TypeCheck, string>> = {
  "not-checked": "Not checked",
  ok: "Reads as ordered",
  "other-type": "Reads as another type",
};

export const groundings = ["not-checked", "ungrounded", "grounded", "exposed"] as const;
export type Grounding = (typeof groundings)[number];
export const groundingLabels: Readonly<Record<Grounding, string>> = {
  "not-checked": "Not checked",
  ungrounded: "Ungrounded: insulated from the sheath",
  grounded: "Grounded: welded to the sheath",
  exposed: "Exposed: outside the sheath",
};
