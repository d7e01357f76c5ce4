/** Why work stands still: ISO/IEC 17025 7.4.3 (condition, question to the customer) and 7.10 (nonconforming work). */
export const holdKinds = ["condition", "question", "nonconforming-work"] as const;
export type HoldKind = (typeof holdKinds)[number];

export const holdKindLabels: Readonly<Record<HoldKind, string>> = {
  condition: "Condition not as described",
  question: "Waiting for the customer's answer",
  "nonconforming-work": "Nonconforming work",
};

export const holdOutcomes = ["go-on", "go-on-with-disclaimer", "return-unmeasured"] as const;
export type HoldOutcome = (typeof holdOutcomes)[number];

export const holdOutcomeLabels: Readonly<Record<HoldOutcome, string>> = {
  "go-on": "Go on as ordered",
  "go-on-with-disclaimer": "Go on, with a disclaimer on the certificate",
  "return-unmeasured": "Return unmeasured",
};

export const holdEndLabels: Readonly<Record<HoldOutcome, string>> = {
  "go-on": "Ended: goes on as ordered",
  "go-on-with-disclaimer": "Ended: goes on, with a disclaimer",
  "return-unmeasured": "Ended: goes back unmeasured",
};
