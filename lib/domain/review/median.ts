type Weighted = { readonly value: number; readonly weight: number };

/** The value with half the weight on either side; between two of them, their middle. NaN where there is nothing. */
export const weightedMedian = (items: readonly Weighted[]): number => {
  const sorted = [...items].sort((left, right) => left.value - right.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let passed = 0;
  for (const [at, { value, weight }] of sorted.entries()) {
    passed += weight;
    const next = sorted[at + 1];
    if (passed > half || !next) return value;
    if (passed === half) return (value + next.value) / 2;
  }
  return Number.NaN;
};

export const median = (values: readonly number[]): number =>
  weightedMedian(values.map((value) => ({ value, weight: 1 })));

/** Of a normal distribution, the standard deviation over the median absolute deviation. */
const normalOverMad = 1.4826;

/** Standard deviation by the median absolute deviation from zero: a few outliers do not widen it. */
export const robustSpread = (deviations: readonly number[]): number =>
  deviations.length === 0 ? 0 : normalOverMad * median(deviations.map(Math.abs));

/** The standard error of a median of n, over the standard deviation of one. */
export const medianError = (spread: number, count: number): number => (1.2533 * spread) / Math.sqrt(count);
