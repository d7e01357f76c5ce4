/** First index whose time is ≥ t (times ascending). */
export function firstAtOrAfter(seconds: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] ?? Number.NaN) < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** One past the last index whose time is ≤ t (times ascending). */
export function firstAfter(seconds: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] ?? Number.NaN) <= t) low = middle + 1;
    else high = middle;
  }
  return low;
}
