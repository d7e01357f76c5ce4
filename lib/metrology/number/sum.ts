/**
 * Sum rounded once: J. R. Shewchuk's growing expansion (Discrete Comput. Geom. 18 (1997) 305).
 * The partial sums do not overlap, so the order of the terms does not change a bit of the result.
 */
export function sum(values: ArrayLike<number>): number {
  const partials: number[] = [];
  for (let n = 0; n < values.length; n += 1) {
    let x = values[n] ?? Number.NaN;
    // An infinity or NaN would turn into NaN inside the expansion; hand it on plainly.
    if (!Number.isFinite(x)) return plainSum(values);
    let kept = 0;
    for (let i = 0; i < partials.length; i += 1) {
      let y = partials[i] ?? 0;
      if (Math.abs(x) < Math.abs(y)) {
        const swap = x;
        x = y;
        y = swap;
      }
      const high = x + y;
      const low = y - (high - x);
      if (low !== 0) {
        partials[kept] = low;
        kept += 1;
      }
      x = high;
    }
    partials[kept] = x;
    partials.length = kept + 1;
  }
  return roundPartials(partials);
}

function plainSum(values: ArrayLike<number>): number {
  let total = 0;
  for (let n = 0; n < values.length; n += 1) total += values[n] ?? Number.NaN;
  return total;
}

/** Adds from the largest down; where the rest ends on a tie, the next partial decides its direction. */
function roundPartials(partials: readonly number[]): number {
  let n = partials.length - 1;
  if (n < 0) return 0;
  let high = partials[n] ?? 0;
  let low = 0;
  while (n > 0) {
    const x = high;
    n -= 1;
    const y = partials[n] ?? 0;
    high = x + y;
    low = y - (high - x);
    if (low !== 0) break;
  }
  const next = n > 0 ? (partials[n - 1] ?? 0) : 0;
  if ((low < 0 && next < 0) || (low > 0 && next > 0)) {
    const doubled = low * 2;
    const moved = high + doubled;
    if (moved - high === doubled) return moved;
  }
  return high;
}
