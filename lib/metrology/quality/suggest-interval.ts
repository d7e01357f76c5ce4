import { found, type Outcome, refused } from "../outcome";
import { predictDrift, type StandardHistory } from "./predict-drift";

export type SuggestedInterval = {
  /** In the unit of the history's `at`, counted from the last calibration. */
  readonly interval: number;
  /** What ends it: the drift that reaches the allowed limit, or the stated maximum. */
  readonly endedBy: "drift" | "maximum";
  /** The largest change from the last calibration to be expected at the end of it. */
  readonly expectedChange: number;
};

/** Halvings: 2^-60 of the maximum is less than any date can say. */
const HALVINGS = 60;

/**
 * How long a standard may go until its next calibration: the longest time for which the whole prediction interval stays
 * within ± `allowed` of its last calibration, the value that is in use; never longer than `maximum`.
 *
 * Source: the idea of ILAC-G24:2022 (intervals from drift against an allowed limit; clause not at hand), with the interval
 * of `predictDrift`. Both of its ends are convex or concave in time, so once the limit is left it stays left and halving
 * finds the place. `allowed` in the value's unit, `maximum` in that of `at`, both above 0. Problems: those of
 * `predictDrift`; `outside-range` for `allowed` or `maximum`; `no-solution` where the scatter of the calibrations alone
 * exceeds what is allowed, which no interval mends.
 */
export function suggestInterval(
  history: StandardHistory,
  allowed: number,
  maximum: number,
  probability?: number,
): Outcome<SuggestedInterval> {
  if (!(allowed > 0 && maximum > 0 && maximum < Number.POSITIVE_INFINITY)) {
    return refused("outside-range", "allowed change and longest interval are above 0");
  }
  const line = predictDrift(history, probability);
  if (!line.ok) return line;
  const last = history.reduce((a, b) => (b.at >= a.at ? b : a));
  const change = (interval: number): number => {
    const { low, high } = line.value.predict(last.at + interval);
    return Math.max(Math.abs(high - last.value), Math.abs(low - last.value));
  };
  if (change(0) > allowed) {
    return refused("no-solution", "the calibrations scatter by more than the allowed change");
  }
  if (change(maximum) <= allowed) {
    return found({ interval: maximum, endedBy: "maximum", expectedChange: change(maximum) });
  }
  let low = 0;
  let high = maximum;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (change(middle) <= allowed) low = middle;
    else high = middle;
  }
  return found({ interval: low, endedBy: "drift", expectedChange: change(low) });
}
