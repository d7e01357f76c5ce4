import { lineAt, linearFit } from "../number/linear-fit";
import { studentQuantile } from "../number/student";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/** What a standard was found to be, when: days from any origin (or hours of use), value in any one unit. */
export type StandardHistory = readonly { readonly at: number; readonly value: number }[];

export type DriftLine = {
  readonly slope: number;
  readonly standardUncertaintyOfSlope: number;
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
  /** Factor t_p(ν) of the interval. */
  readonly coverageFactor: number;
  /** The standard's next value at a time, with the interval that holds it with the probability asked for. */
  predict(at: number): DriftPrediction;
};

export type DriftPrediction = { readonly value: number; readonly low: number; readonly high: number };

const LEAST_CALIBRATIONS = 3;
const USUAL_PROBABILITY = 0.95;

/**
 * Straight line through a standard's calibrations, and where the next will lie:
 * ŷ(x) ± t_p(n − 2)·s·√(1 + 1/n + (x − x̄)²/Σ(x_i − x̄)²).
 *
 * Source: JCGM 100:2008, H.3 for line and uncertainties; the prediction interval is that of linear regression
 * (N. R. Draper and H. Smith, Applied Regression Analysis, chapter 1; chapter from memory). The 1 under the root is the
 * scatter of the coming calibration itself. `history`: three calibrations or more; value and `at` in any one unit each,
 * the slope in value per `at`. `probability` above 0 and below 1. Problems: `too-few` under three or all at one time;
 * `not-finite`; `outside-range` for the probability.
 */
export function predictDrift(history: StandardHistory, probability = USUAL_PROBABILITY): Outcome<DriftLine> {
  if (history.length < LEAST_CALIBRATIONS) {
    return refused("too-few", `a drift with an interval needs ${LEAST_CALIBRATIONS} calibrations`);
  }
  if (!history.every(({ at, value }) => Number.isFinite(at) && Number.isFinite(value))) {
    return refused("not-finite", "a calibration has no time or no value");
  }
  if (!(probability > 0 && probability < 1)) {
    return refused("outside-range", "the probability lies between 0 and 1");
  }
  const times = history.map(({ at }) => at);
  const line = linearFit(
    times,
    history.map(({ value }) => value),
  );
  if (!line.ok) return line;
  const fit = line.value;
  const count = history.length;
  const degreesOfFreedom = count - 2;
  const residuals = history.map(({ at, value }) => value - lineAt(fit, at));
  const variance = sum(residuals.map((one) => one * one)) / degreesOfFreedom;
  const squares = sum(times.map((at) => (at - fit.meanX) * (at - fit.meanX)));
  const coverageFactor = studentQuantile(probability, degreesOfFreedom);
  return found({
    slope: fit.slope,
    standardUncertaintyOfSlope: Math.sqrt(variance / squares),
    residualStandardDeviation: Math.sqrt(variance),
    degreesOfFreedom,
    coverageFactor,
    predict(at) {
      const value = lineAt(fit, at);
      const away = at - fit.meanX;
      const half = coverageFactor * Math.sqrt(variance * (1 + 1 / count + (away * away) / squares));
      return { value, low: value - half, high: value + half };
    },
  });
}
