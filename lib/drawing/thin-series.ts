/**
 * Indices that draw the same line in `columns` px: first, last, lowest and highest reading of each column, so that a
 * spike is never lost. Readings that are not finite are kept as breaks.
 */
export function thinSeries(values: ArrayLike<number>, columns: number): readonly number[] {
  const count = values.length;
  if (count <= columns * 4) return Array.from({ length: count }, (_, index) => index);
  const kept: number[] = [];
  for (let column = 0; column < columns; column += 1) {
    const from = Math.floor((column * count) / columns);
    const to = Math.floor(((column + 1) * count) / columns);
    const chosen = new Set([from, to - 1]);
    let low = from;
    let high = from;
    for (let index = from; index < to; index += 1) {
      const value = values[index] ?? Number.NaN;
      if (!Number.isFinite(value)) chosen.add(index);
      if (value < (values[low] ?? Number.NaN)) low = index;
      if (value > (values[high] ?? Number.NaN)) high = index;
    }
    kept.push(...[...chosen.add(low).add(high)].sort((a, b) => a - b));
  }
  return kept;
}
