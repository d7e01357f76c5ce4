/**
 * Quantile with linear interpolation between order statistics (Hyndman and Fan 1996, definition 7; number from memory).
 * `p` from 0 to 1. NaN for an empty list.
 */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * p;
  const below = Math.floor(at);
  const low = sorted[below] ?? Number.NaN;
  const high = sorted[below + 1] ?? low;
  return low + (at - below) * (high - low);
}
