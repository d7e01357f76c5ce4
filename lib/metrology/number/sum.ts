/**
 * Sum rounded once: J. R. Shewchuk's growing expansion (Discrete Comput. Geom. 18 (1997) 305).
 * The partial sums do not overlap, so the order of the terms does not change a bit of the result. In the unit of the
 * values; no values: 0. An infinity or NaN among them is handed on as plain addition gives it. No error cases.
 */
export function sum(values: ArrayLike<number>): number {
  return sumBetween(values, 0, values.length);
}

/** `sum` of the values from the place `from` to before the place `to`, which lie within the list; same source and unit,
 * and the same for NaN. */
export function sumBetween(values: ArrayLike<number>, from: number, to: number): number {
  // Readings of one kind need three partial sums: kept in variables, they cost a third of a list.
  let small = 0;
  let middle = 0;
  let large = 0;
  for (let n = from; n < to; n += 1) {
    const x = values[n] as number;
    // An infinity or NaN would turn into NaN inside the expansion; hand it on plainly.
    if (!Number.isFinite(x)) return plainSum(values, from, to);
    // x + y and what its rounding lost, whichever of the two is larger (D. E. Knuth, TAOCP 2, 4.2.2).
    const first = x + small;
    let taken = first - x;
    const low = x - (first - taken) + (small - taken);
    const second = first + middle;
    taken = second - first;
    const lower = first - (second - taken) + (middle - taken);
    const third = second + large;
    taken = third - second;
    const rest = second - (third - taken) + (large - taken);
    if (low !== 0 && lower !== 0 && rest !== 0) {
      return sumInList(values, from, n, to, [small, middle, large]);
    }
    small = low === 0 ? lower : low;
    middle = rest === 0 ? (low === 0 ? 0 : lower) : rest;
    large = third;
  }
  const partials = [small, middle, large].filter((partial) => partial !== 0);
  return roundPartials(partials, partials.length);
}

/** The same with as many partial sums as it takes, from the place `at` on; what went before is in `begun`. */
function sumInList(
  values: ArrayLike<number>,
  from: number,
  at: number,
  to: number,
  begun: readonly number[],
): number {
  const partials = begun.filter((partial) => partial !== 0);
  // The list never shrinks: setting its length costs more than all the additions.
  let count = partials.length;
  for (let n = at; n < to; n += 1) {
    let x = values[n] as number;
    if (!Number.isFinite(x)) return plainSum(values, from, to);
    let kept = 0;
    for (let i = 0; i < count; i += 1) {
      const y = partials[i] as number;
      const high = x + y;
      const taken = high - x;
      const low = x - (high - taken) + (y - taken);
      if (low !== 0) {
        partials[kept] = low;
        kept += 1;
      }
      x = high;
    }
    partials[kept] = x;
    count = kept + 1;
  }
  return roundPartials(partials, count);
}

function plainSum(values: ArrayLike<number>, from: number, to: number): number {
  let total = 0;
  for (let n = from; n < to; n += 1) total += values[n] as number;
  return total;
}

/** Adds from the largest down; where the rest ends on a tie, the next partial decides its direction. */
function roundPartials(partials: readonly number[], count: number): number {
  let n = count - 1;
  if (n < 0) return 0;
  let high = partials[n] as number;
  let low = 0;
  while (n > 0) {
    const x = high;
    n -= 1;
    const y = partials[n] as number;
    high = x + y;
    low = y - (high - x);
    if (low !== 0) break;
  }
  const next = n > 0 ? (partials[n - 1] as number) : 0;
  if ((low < 0 && next < 0) || (low > 0 && next > 0)) {
    const doubled = low * 2;
    const moved = high + doubled;
    if (moved - high === doubled) return moved;
  }
  return high;
}
