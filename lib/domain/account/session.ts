import type { SessionKind } from "../staff/actor";
import type { Role } from "../staff/roles";
import type { AccountPolicy } from "./policy";

/** However busy it was: a working day. */
export const longestSessionMilliseconds = 12 * 60 * 60_000;
/** What is written down at most once a minute: when a session was last seen. */
export const seenEveryMilliseconds = 60_000;

export type HeldSession = {
  readonly kind: string;
  readonly lastSeenAt: Date;
  readonly endsAt: Date;
  readonly endedAt: Date | null;
};

/** Whether a session still opens anything: not ended, not too old, and not left alone too long. */
export const isSessionOpen = (session: HeldSession, policy: AccountPolicy, now: Date): boolean => {
  if (session.endedAt !== null || now >= session.endsAt) return false;
  if (session.kind === "bench") return true;
  return now.getTime() - session.lastSeenAt.getTime() < policy.idleMinutes * 60_000;
};

/** At the bench: asked for, and by somebody who works there. Anybody else has a full session, which ends when left alone. */
export const sessionKindFor = (askedForBench: boolean, roles: readonly string[]): SessionKind =>
  askedForBench && roles.includes("technician" satisfies Role) ? "bench" : "full";
