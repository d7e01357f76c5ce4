import type { Sha256 } from "../certificate/content-hash";
import { type ResultName, resultKey } from "./result-name";
import type { ReviewException } from "./review-exception";

/** One in ten of what nothing speaks against is looked at all the same. The laboratory's habit, no source. */
const oneIn = 10;

export type ResultsToOpen = {
  /** By an exception that names it. */
  readonly named: readonly ResultName[];
  /** By the lot. */
  readonly drawn: readonly ResultName[];
};

/**
 * The place of a result in the lot: a hash over the seed and its name. So a result keeps its place whatever becomes of the
 * others, and who knows the seed can draw again and see that nobody chose.
 */
const placeInLot = (seed: Uint8Array, name: ResultName, sha256: Sha256): string => {
  const words = new TextEncoder().encode(`\n${resultKey(name)}`);
  const bytes = new Uint8Array(seed.length + words.length);
  bytes.set(seed);
  bytes.set(words, seed.length);
  return [...sha256(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
};

/** Every result that an exception names, and a tenth of the rest, rounded up, by lot; in the order of the results. */
export const resultsToOpen = (given: {
  readonly results: readonly ResultName[];
  readonly exceptions: readonly ReviewException[];
  readonly seed: Uint8Array;
  readonly sha256: Sha256;
}): ResultsToOpen => {
  const called = new Set(
    given.exceptions.flatMap(({ isNote, point, others = [] }) =>
      isNote || !point ? [] : [point, ...others].map(resultKey),
    ),
  );
  const rest = given.results.filter((name) => !called.has(resultKey(name)));
  const lot = new Set(
    rest
      .map((name) => ({ key: resultKey(name), place: placeInLot(given.seed, name, given.sha256) }))
      .sort((left, right) => (left.place < right.place ? -1 : 1))
      .slice(0, Math.ceil(rest.length / oneIn))
      .map(({ key }) => key),
  );
  return {
    named: given.results.filter((name) => called.has(resultKey(name))),
    drawn: rest.filter((name) => lot.has(resultKey(name))),
  };
};
