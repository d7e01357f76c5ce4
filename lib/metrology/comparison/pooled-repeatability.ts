import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/** An earlier series: its sample standard deviation and how many readings it held. */
export type EarlierSeries = { readonly deviation: number; readonly readings: number };

export type PooledRepeatability = {
  /** s_p of a single reading, unit of the series. */
  readonly deviation: number;
  readonly degreesOfFreedom: number;
  /** s_p/√n of a mean of n readings. */
  readonly standardUncertainty: number;
};

/**
 * Repeatability from history: s_p = √(Σνᵢ·sᵢ²/Σνᵢ), νᵢ = nᵢ − 1 (JCGM 100:2008, 4.2.4; EA-4/02 S5 takes it from ten
 * earlier series rather than from its four readings), and of the mean of `readings` independent ones s_p/√n (4.2.4).
 * Problems: `too-few` without series, or for a series of fewer than two; `not-finite`; `not-applicable` for a deviation
 * below zero or a count that is not whole and above 0.
 */
export function pooledRepeatability(
  history: readonly EarlierSeries[],
  readings: number,
): Outcome<PooledRepeatability> {
  if (history.length === 0) return refused("too-few", "a pooled deviation needs earlier series");
  for (const { deviation, readings: n } of history) {
    if (!Number.isFinite(deviation) || !Number.isFinite(n))
      return refused("not-finite", "a series is not a number");
    if (deviation < 0 || Math.floor(n) !== n)
      return refused("not-applicable", "a series has s ≥ 0 and whole n");
    if (n < 2) return refused("too-few", "a series of fewer than two readings has no deviation");
  }
  if (!(readings >= 1 && Math.floor(readings) === readings)) {
    return refused("not-applicable", `a mean of ${readings} readings`);
  }
  const degreesOfFreedom = sum(history.map(({ readings: n }) => n - 1));
  const squares = sum(history.map(({ deviation, readings: n }) => (n - 1) * deviation * deviation));
  const deviation = Math.sqrt(squares / degreesOfFreedom);
  return found({ deviation, degreesOfFreedom, standardUncertainty: deviation / Math.sqrt(readings) });
}
