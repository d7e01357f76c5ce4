/** What a straight line through a stretch of readings needs, and its extremes: seconds and °C. */
export type Stretch = {
  readonly count: number;
  readonly meanSeconds: number;
  readonly meanCelsius: number;
  /** Σ(t − t̄)², s². */
  readonly squares: number;
  /** Σ(t − t̄)(T − T̄), s·°C. */
  readonly products: number;
  readonly lowest: number;
  readonly highest: number;
};

/** One reading as a stretch (arithmetic: the sums over one reading): seconds and °C. No error cases; NaN stays NaN. */
export function stretchOf(seconds: number, celsius: number): Stretch {
  return {
    count: 1,
    meanSeconds: seconds,
    meanCelsius: celsius,
    squares: 0,
    products: 0,
    lowest: celsius,
    highest: celsius,
  };
}

/**
 * Two stretches as one, without the readings themselves.
 *
 * Source: updating formulae for co-moments (T. F. Chan, G. H. Golub and R. J. LeVeque, Am. Stat. 37 (1983) 242). Only
 * additions of what belongs together, never a subtraction of what has left: nothing builds up however long a stream runs.
 * Seconds and °C; no error cases, NaN stays NaN.
 */
export function joined(a: Stretch, b: Stretch): Stretch {
  const count = a.count + b.count;
  const seconds = b.meanSeconds - a.meanSeconds;
  const celsius = b.meanCelsius - a.meanCelsius;
  const share = b.count / count;
  return {
    count,
    meanSeconds: a.meanSeconds + share * seconds,
    meanCelsius: a.meanCelsius + share * celsius,
    squares: a.squares + b.squares + seconds * seconds * a.count * share,
    products: a.products + b.products + seconds * celsius * a.count * share,
    lowest: Math.min(a.lowest, b.lowest),
    highest: Math.max(a.highest, b.highest),
  };
}
