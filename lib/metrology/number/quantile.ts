/**
 * Quantile with linear interpolation between order statistics (Hyndman and Fan 1996, definition 7; number from memory), in
 * the unit of the values. `p` from 0 to 1. NaN for an empty list, for p outside its range and where a value is NaN.
 */
export function quantile(values: readonly number[], p: number): number {
  if (values.length === 0 || !(p >= 0 && p <= 1) || values.some((x) => Number.isNaN(x))) return Number.NaN;
  const sorted = Float64Array.from(values).sort();
  const at = (sorted.length - 1) * p;
  const below = Math.floor(at);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (at - below) * (high - low);
}
