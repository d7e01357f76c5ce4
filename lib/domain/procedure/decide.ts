import { ok, type Result, refuse } from "../refusal";
import { Verification } from "./schema";
import { type ProcedureRevision, revisionName } from "./types";

/** One draft at a time, so that nobody approves one while another is written. */
export const decideDraft = (revisions: readonly ProcedureRevision[]): Result<ProcedureRevision> => {
  const draft = revisions.find(({ state }) => state === "draft");
  if (draft)
    return refuse(
      "wrong-state",
      `${revisionName(draft)} is a draft already. Change that one, or make it current first.`,
    );
  const current = revisions.find(({ state }) => state === "current");
  return current
    ? ok(current)
    : refuse("wrong-state", "There is no current revision to draft the next from.");
};

export const decideChange = (revision: ProcedureRevision): Result<ProcedureRevision> =>
  revision.state === "draft"
    ? ok(revision)
    : refuse(
        "wrong-state",
        `${revisionName(revision)} is ${revision.state}: its content is fixed. Draft a new revision.`,
      );

/** By a person who did not write it, once it says what was changed and how it was verified (7.2.1.5). */
export const decideCurrent = (revision: ProcedureRevision, personId: string): Result<ProcedureRevision> => {
  const change = decideChange(revision);
  if (!change.ok) return change;
  if (revision.recordedById === personId)
    return refuse(
      "rule",
      `You drafted ${revisionName(revision)}: a second person reads it and makes it current.`,
    );
  const verification = Verification.safeParse(revision.verification);
  if (!verification.success || revision.change === "")
    return refuse("rule", `${revisionName(revision)} was not made current.`, {
      ...(revision.change === "" ? { change: "Write what this revision changes, and why." } : {}),
      ...(verification.success ? {} : { verification: verification.error.issues[0]?.message ?? "" }),
    });
  return ok(revision);
};
