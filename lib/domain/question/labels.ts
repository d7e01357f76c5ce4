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

export const returnChoice = "Return it unmeasured";
/** Its place in the order stays free until the other one comes. */
export const anotherChoice = "Wait: we send another sensor";
/** It does not come back: the customer's instruction to do away with it. */
export const disposeChoice = "Dispose of it for us";

/** Offered where the condition is not as described. */
export const conditionChoices = [insistChoice, returnChoice, anotherChoice, disposeChoice] as const;

/** An answer after which the sensor is not measured. */
export const isNotMeasuredChoice = (choice: string): boolean =>
  choice === returnChoice || choice === anotherChoice || choice === disposeChoice;
