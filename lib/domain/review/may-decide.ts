import { ok, type Result, refuse } from "../refusal";

export type SignOffStanding =
  /** Somebody else measured. */
  | { readonly kind: "independent" }
  /** The performer, by the laboratory's policy: recorded, and a second look owed by somebody else. */
  | { readonly kind: "exception"; readonly reason: string };

/**
 * ISO/IEC 17025 4.1, 7.8.1.1: results are reviewed before release, by somebody who did not make them. A two-person
 * laboratory may say otherwise once, in its policy; then each such sign-off carries its reason.
 */
export const decideSignOffStanding = (given: {
  readonly signatoryId: string;
  /** Everybody who had a hand in the measurement or its evaluation. */
  readonly performerIds: readonly string[];
  readonly performerMaySignOff: boolean;
  readonly exceptionReason: string;
}): Result<SignOffStanding> => {
  if (!given.performerIds.includes(given.signatoryId)) return ok({ kind: "independent" });
  if (!given.performerMaySignOff)
    return refuse(
      "rule",
      "You measured or evaluated this run yourself. Another signatory has to review it; nothing was changed.",
    );
  const reason = given.exceptionReason.trim();
  if (reason.length < 10)
    return refuse(
      "invalid",
      "You measured this run yourself. The policy allows it with a reason that is recorded.",
      {
        exceptionReason: "Say in a sentence why nobody else can review it now.",
      },
    );
  return ok({ kind: "exception", reason });
};

/** The second look is somebody else's: neither the one who signed nor anyone who measured. */
export const decideSecondLook = (given: {
  readonly personId: string;
  readonly signedById: string;
  readonly performerIds: readonly string[];
  readonly isOwed: boolean;
  readonly isDone: boolean;
}): Result<null> => {
  if (!given.isOwed) return refuse("wrong-state", "No second look is owed for this certificate.");
  if (given.isDone) return refuse("wrong-state", "The second look was already taken.");
  if (given.personId === given.signedById || given.performerIds.includes(given.personId))
    return refuse("rule", "The second look has to be taken by somebody who neither measured nor signed.");
  return ok(null);
};
