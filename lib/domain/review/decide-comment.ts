import { ok, type Result, refuse } from "../refusal";

/** Remarks are made and answered while something can still be changed: until the sensor is signed for. */
export const decideComment = (given: {
  readonly runState: string;
  /** Tag; null = of the whole run. */
  readonly sensor: string | null;
  /** Number of the certificate that the sensor has from this run already. */
  readonly certificate: string | null;
  /** It, or of the whole run something, is to be replaced by what was evaluated since. */
  readonly isReplacing?: boolean;
}): Result<null> => {
  if (given.runState === "signed-off" && given.isReplacing) return ok(null);
  if (given.runState === "signed-off")
    return refuse(
      "wrong-state",
      "This run is signed off; nothing more is remarked on it. Open a finding instead.",
    );
  if (given.runState !== "submitted" && given.runState !== "returned")
    return refuse("wrong-state", "This run does not wait for review; remarks are made once it is submitted.");
  if (given.certificate !== null)
    return refuse(
      "wrong-state",
      `${given.sensor ?? "It"} is signed for already (${given.certificate}). What is wrong with it goes the way of an amendment.`,
    );
  return ok(null);
};

/** An answer goes to a remark that is still open. */
export const decideAnswer = (given: {
  readonly isAnswer: boolean;
  readonly isSettled: boolean;
  /** This answer is to settle it, and whether whoever gives it may: who made the remark, or who may sign. */
  readonly settles: boolean;
  readonly maySettle: boolean;
}): Result<null> => {
  if (given.isAnswer) return refuse("invalid", "Answer the remark itself, not an answer to it.");
  if (given.isSettled)
    return refuse("wrong-state", "This remark is settled. Make a new one if something is left to say.");
  if (given.settles && !given.maySettle)
    return refuse(
      "rule",
      "Whoever made this remark settles it, or a signatory. Nothing was stored; give your answer without that tick.",
    );
  return ok(null);
};
