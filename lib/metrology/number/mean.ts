import { sum } from "./sum";

/** Arithmetic mean; NaN for no values, so callers count first. */
export function mean(values: ArrayLike<number>): number {
  return sum(values) / values.length;
}
