export type Gap = { readonly from: number; readonly to: number; readonly usual: number };

/** Pauses longer than this many usual (median) intervals are shown to the person; the readings are kept. */
const gapFactor = 10;

export const findGaps = (times: Float64Array): readonly Gap[] => {
  if (times.length < 4) return [];
  const intervals = Float64Array.from(
    { length: times.length - 1 },
    (_, index) => (times[index + 1] as number) - (times[index] as number),
  );
  const usual = intervals.toSorted()[Math.floor(intervals.length / 2)] as number;
  const gaps: Gap[] = [];
  for (const [index, interval] of intervals.entries())
    if (interval > gapFactor * usual)
      gaps.push({ from: times[index] as number, to: times[index + 1] as number, usual });
  return gaps;
};
