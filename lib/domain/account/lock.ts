import type { AccountPolicy } from "./policy";

type Attempt = { readonly succeeded: boolean; readonly at: Date };

/** Failures older than this no longer count towards a lock. */
export const lockMemoryMilliseconds = 24 * 60 * 60_000;

export const isLocked = (lockedUntil: Date | null, now: Date): boolean =>
  lockedUntil !== null && now < lockedUntil;

/**
 * Until when an account is locked now, or null. Counted from the last success or the end of the last lock, so that a
 * lock that is over does not fall shut again at the first slip. Attempts while it is locked do not lengthen it.
 */
export const decideLock = (
  attempts: readonly Attempt[],
  lockedUntil: Date | null,
  policy: AccountPolicy,
  now: Date,
): Date | null => {
  if (isLocked(lockedUntil, now)) return null;
  const since = Math.max(now.getTime() - lockMemoryMilliseconds, lockedUntil?.getTime() ?? 0);
  const counted = attempts
    .filter((attempt) => attempt.at.getTime() >= since)
    .toSorted((a, b) => a.at.getTime() - b.at.getTime() || Number(a.succeeded) - Number(b.succeeded));
  const failures = counted.length - 1 - counted.findLastIndex((attempt) => attempt.succeeded);
  return failures >= policy.lockAfter ? new Date(now.getTime() + policy.lockMinutes * 60_000) : null;
};
