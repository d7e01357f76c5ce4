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

/** What a person must do who warmed a tip; null where it passed. */
export const tipCheckRemedy = (state: TipCheckState): string | null => {
  if (state === "too-small")
    return `Rise too small: ${leastTipRiseMicrovolt} µV or more is wanted. See whether it stands on this channel, then warm it again.`;
  if (state === "other-channels-moved")
    return "Other channels moved. Find out which channel this one stands on, then warm it again.";
  return null;
};
