import { found, type Outcome, refused } from "../outcome";

export type EwmaPoint = {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly isOut: boolean;
};

const SIGMAS = 3;
const USUAL_WEIGHT = 0.2;

/**
 * Exponentially weighted moving average z_i = λ·x_i + (1 − λ)·z_{i−1}, z_0 = centre, with limits
 * centre ± 3σ√(λ/(2 − λ)·(1 − (1 − λ)^{2i})): shows a small lasting shift that single runs hide.
 *
 * Source: S. W. Roberts, Technometrics 1 (1959) 239; ISO 7870-6. The limits at each run, not only in the long run, so that
 * a first run is judged too. `values` in order of time, `centre` and `sigma` of a chart of past runs, all in one unit;
 * λ above 0, at most 1 (1 is the plain chart). Problems: `not-finite` for a number that is none; `outside-range` for λ
 * or σ ≤ 0.
 */
export function ewmaChart(
  values: readonly number[],
  centre: number,
  sigma: number,
  weight = USUAL_WEIGHT,
): Outcome<readonly EwmaPoint[]> {
  if (!(weight > 0 && weight <= 1))
    return refused("outside-range", "the weight lies above 0 and at most at 1");
  if (!(sigma > 0)) return refused("outside-range", "a chart needs a standard deviation above 0");
  const isComplete = Number.isFinite(centre) && Number.isFinite(sigma) && values.every(Number.isFinite);
  if (!isComplete) return refused("not-finite", "a number of the chart is missing");
  let average = centre;
  let forgotten = 1;
  const points = values.map((x) => {
    average = weight * x + (1 - weight) * average;
    forgotten *= (1 - weight) * (1 - weight);
    const half = SIGMAS * sigma * Math.sqrt((weight / (2 - weight)) * (1 - forgotten));
    const [low, high] = [centre - half, centre + half];
    return { value: average, low, high, isOut: average < low || average > high };
  });
  return found(points);
}
