/** Two channels of one type swapped are told apart only by warming each tip: the rise has to be plain, and on it alone. */
export const leastTipRiseMicrovolt = 20;

export type TipCheckSeen = { readonly riseMicrovolt: number; readonly onlyThisChannel: boolean };
export type TipCheckState = "passed" | "too-small" | "other-channels-moved" | "missing";

export const tipCheckStateLabels: Readonly<Record<TipCheckState, string>> = {
  passed: "Passed",
  "too-small": "Rise too small",
  "other-channels-moved": "Other channels moved",
  missing: "Not done",
};

export const assessTipCheck = (
  check: TipCheckSeen | null,
  leastRiseMicrovolt = leastTipRiseMicrovolt,
): TipCheckState => {
  if (!check) return "missing";
  if (!check.onlyThisChannel) return "other-channels-moved";
  return check.riseMicrovolt >= leastRiseMicrovolt ? "passed" : "too-small";
};
