import { isLocked } from "../account/lock";
import type { AccountPolicy } from "../account/policy";
import { type HeldSession, isSessionOpen } from "../account/session";
import { ok, type Result, refuse } from "../refusal";
import { may } from "../staff/permissions";
import { isRole } from "../staff/roles";

/** As the database has them at the moment of the act. */
export type Signer = {
  readonly active: boolean;
  readonly lockedUntil: Date | null;
  readonly roles: readonly string[];
  /** The sign-in they come by; null: none, or another person's. */
  readonly session: HeldSession | null;
  readonly hasSecondFactor: boolean;
};

/** Whether this person may sign at all, whatever they type. */
export const decideSigner = (signer: Signer, policy: AccountPolicy, now: Date): Result<null> => {
  if (!signer.active || !may(signer.roles.filter(isRole), "review.decide"))
    return refuse("not-permitted", "You are no signatory any more. Nothing was signed.");
  if (!signer.session || !isSessionOpen(signer.session, policy, now))
    return refuse("not-permitted", "Signing needs a session that is open. Sign in, and sign again.");
  if (signer.session.kind === "bench")
    return refuse(
      "not-permitted",
      "A session at the bench records and does not sign. Sign in without “at the bench”.",
    );
  if (isLocked(signer.lockedUntil, now))
    return refuse(
      "too-many",
      "Your account is locked after too many wrong tries, so nothing is signed. A quality manager can open it.",
    );
  if (!signer.hasSecondFactor)
    return refuse(
      "rule",
      "Signing needs one-time codes, and you have none yet: set them up at “Your account”, “One-time codes”.",
    );
  return ok(null);
};
