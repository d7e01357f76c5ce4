/** First place whose time is ≥ t, by the method of halving: times ascending and t in one unit. None is: the length. NaN for t: 0. */
export function firstAtOrAfter(seconds: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] as number) < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** One past the last place whose time is ≤ t, by the method of halving: times ascending and t in one unit. None is, or t is NaN: 0. */
export function firstAfter(seconds: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] as number) <= t) low = middle + 1;
    else high = middle;
  }
  return low;
}
