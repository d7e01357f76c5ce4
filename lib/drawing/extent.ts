/** Lowest and highest finite value of several series; undefined when there is none. */
export function extent(...series: readonly ArrayLike<number>[]): readonly [number, number] | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const values of series) {
    for (let index = 0; index < values.length; index += 1) {
      const value = values[index] ?? Number.NaN;
      if (!Number.isFinite(value)) continue;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low <= high ? [low, high] : undefined;
}
