import { sum } from "./sum";

/** Arithmetic mean (JCGM 100:2008, 4.2.1, eq. 3) of the exact `sum`, in the unit of the values; NaN for no values, so callers count first. */
export function mean(values: ArrayLike<number>): number {
  return sum(values) / values.length;
}
