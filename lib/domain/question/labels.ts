/** How an answer came. */
export const answerWays = ["link", "portal", "desk"] as const;
export type AnswerWay = (typeof answerWays)[number];

export const answerWayLabels: Readonly<Record<AnswerWay, string>> = {
  link: "by the link in the mail",
  portal: "in the portal",
  desk: "told to the desk",
};

/** ISO/IEC 17025 7.4.3: with this answer the certificate carries a disclaimer. */
export const insistChoice = "Measure it as it is";

/** Offered where the condition is not as described. */
export const conditionChoices = [
  insistChoice,
  "Return it unmeasured",
  "Wait: we send another sensor",
] as const;
