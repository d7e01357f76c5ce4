/** One of the certificates of an order that were signed by one act. */
export type SignedTogether = {
  readonly hasFile: boolean;
  readonly hasEnded: boolean;
  /** How often a step of making its files did not succeed. */
  readonly failures: number;
};

/** What just happened to one of them; what is given of it is as it is now, after that. */
export type Happened = "issued" | "attempt-failed" | "withdrawn";

/** Nobody waits for it in the letter of the others: made, ended, or failed once, so that it may take long. */
const isSettled = ({ failures, hasEnded, hasFile }: SignedTogether): boolean =>
  hasFile || hasEnded || failures > 0;

const wasSettled = (happened: Happened, { failures, hasEnded, hasFile }: SignedTogether): boolean => {
  if (happened === "issued") return hasEnded || failures > 0;
  if (happened === "attempt-failed") return hasFile || hasEnded || failures > 1;
  return hasFile || failures > 0;
};

const isReady = ({ hasEnded, hasFile }: SignedTogether): boolean => hasFile && !hasEnded;

/**
 * Of how many certificates the customer is told now that they are ready. What was signed together is one letter, when the
 * last of it is made: each is told once, and none before its document is there. One that could not be made at first keeps
 * no letter waiting, and has its own when it is made after all.
 */
export const countReady = (
  happened: Happened,
  own: SignedTogether,
  others: readonly SignedTogether[],
): number => {
  if (!others.every(isSettled)) return 0;
  if (!wasSettled(happened, own)) return [own, ...others].filter(isReady).length;
  return happened === "issued" && isReady(own) ? 1 : 0;
};
