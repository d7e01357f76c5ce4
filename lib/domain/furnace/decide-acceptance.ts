import { ok, type Result, refuse } from "../refusal";

/** Acceptance is somebody else's: neither who measured a survey nor who submitted it; and it is taken once. */
export const decideAcceptance = (given: {
  readonly personId: string;
  readonly measurerIds: ReadonlySet<string>;
  readonly decisions: readonly { readonly decision: string }[];
}): Result<null> => {
  const last = given.decisions.at(-1);
  if (last) return refuse("wrong-state", `It was ${last.decision} already. Nothing was changed.`);
  if (given.measurerIds.has(given.personId))
    return refuse(
      "rule",
      "You measured or recorded this yourself. Another person has to accept it; nothing was changed.",
    );
  return ok(null);
};
