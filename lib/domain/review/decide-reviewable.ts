import { ok, type Result, refuse } from "../refusal";

/** Only a submitted run is decided on, or one with results to replace, and only the evaluation that was on the screen. */
export const decideReviewable = (given: {
  readonly runState: string;
  readonly evaluationId: string;
  readonly seenEvaluationId: string;
  /** Its certificate is to be replaced by what was evaluated since: then also after the sign-off. */
  readonly isReplacing?: boolean;
}): Result<null> => {
  if (given.runState === "returned")
    return refuse(
      "wrong-state",
      "This run was returned meanwhile and is with the technician. Nothing was changed.",
    );
  if (given.runState === "signed-off" && !given.isReplacing)
    return refuse("wrong-state", "This run is signed off already. Nothing was changed.");
  if (given.runState !== "submitted" && given.runState !== "signed-off")
    return refuse("wrong-state", "This run does not wait for review. Nothing was changed.");
  if (given.evaluationId !== given.seenEvaluationId)
    return refuse(
      "changed-meanwhile",
      "The run was evaluated again since you opened it. Nothing was changed; reload and look at the new results.",
    );
  return ok(null);
};
