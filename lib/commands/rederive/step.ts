/** What a step found: all as it was, said with its counts; or the first record that is not, and why. */
export type StepOutcome =
  | { readonly kind: "whole"; readonly said: string }
  | { readonly kind: "broken"; readonly record: string; readonly reason: string };

/**
 * What a record amounts to, by a key that names it: said once by the log and once by the records themselves, so that
 * a record rewritten in full, hashes and all, still disagrees with the log.
 */
export type Facts = Map<string, string>;

/** What the log says of a record's part that was not told when the record was made. */
export const untold = "not told";

/** A record that is not as it was. Thrown within a step, and told as its outcome. */
export class Broken extends Error {
  constructor(
    readonly record: string,
    readonly reason: string,
  ) {
    super(`${record}: ${reason}`);
  }
}

/** Runs a step; a `Broken` thrown in it is its outcome. */
export const outcomeOf = async (work: () => Promise<string>): Promise<StepOutcome> => {
  try {
    return { kind: "whole", said: await work() };
  } catch (error) {
    if (error instanceof Broken) return { kind: "broken", record: error.record, reason: error.reason };
    throw error;
  }
};

export const laboratory = { kind: "laboratory" } as const;

export const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;
