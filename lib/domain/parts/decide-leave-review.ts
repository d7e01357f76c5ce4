import { ok, type Result, refuse } from "../refusal";

/** One sensor leaves the review of a run; the others go on. */
export const decideLeaveReview = (given: {
  readonly tag: string | null;
  readonly state: string;
  readonly hasCertificate: boolean;
  readonly hasLeft: boolean;
  readonly results: "put-back" | "kept";
  readonly measured: number;
}): Result<string> => {
  if (given.tag === null) return refuse("not-found", "This sensor is not in this run.");
  if (given.hasCertificate)
    return refuse("wrong-state", `${given.tag} has its certificate already. Nothing was changed.`);
  if (given.hasLeft || given.state !== "in-review")
    return refuse("wrong-state", `${given.tag} does not wait in this review any more. Nothing was changed.`);
  if (given.results === "kept" && given.measured === 0)
    return refuse("rule", `${given.tag} has no measured result to keep. Put it back to be measured again.`, {
      results: "There is no measured result to keep.",
    });
  return ok(given.tag);
};
