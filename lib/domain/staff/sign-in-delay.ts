type Attempt = { readonly succeeded: boolean; readonly at: Date };

/** Attempts older than this are forgotten. */
export const rememberedMilliseconds = 15 * 60_000;
const freeFailures = 5;
const longestWaitSeconds = 300;

/**
 * Seconds to wait before this account may be tried again: none for the first failures since the last success, then
 * 2, 4, 8 … up to five minutes after each further one. A wait, not a lock: nobody can shut somebody else out for good.
 */
export const signInDelay = (attempts: readonly Attempt[], now: Date): number => {
  // An attempt is written down as failed first: of two at one moment the success is the later one.
  const recent = attempts
    .filter((attempt) => now.getTime() - attempt.at.getTime() < rememberedMilliseconds)
    .toSorted((a, b) => a.at.getTime() - b.at.getTime() || Number(a.succeeded) - Number(b.succeeded));
  const sinceSuccess = recent.slice(recent.findLastIndex((attempt) => attempt.succeeded) + 1);
  const last = sinceSuccess.at(-1);
  const excess = sinceSuccess.length - freeFailures;
  if (!last || excess < 0) return 0;
  let wait = 2;
  for (let step = 0; step < excess && wait < longestWaitSeconds; step += 1) wait *= 2;
  const until = last.at.getTime() + Math.min(wait, longestWaitSeconds) * 1000;
  return Math.max(0, Math.ceil((until - now.getTime()) / 1000));
};
