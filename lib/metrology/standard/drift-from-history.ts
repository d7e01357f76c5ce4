import { leastSquares } from "../number/least-squares";
import { studentQuantile } from "../number/student";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";
import type { Elapsed } from "./expected-drift";

/** One calibration of the standard at one temperature; times from any common start, the value in µV or °C. */
export type CalibrationRecord = Elapsed & { readonly value: number; readonly standardUncertainty: number };

export type DriftCause = "years" | "hours" | "years-and-hours";

/** Rates of drift fitted to a history: plain data. Unit: that of the values, per year and per hour. */
export type DriftFit = {
  readonly against: DriftCause;
  readonly perYear: number;
  readonly perHour: number;
  /** Covariance of the rates, in the order of `against`, from the stated uncertainties alone. */
  readonly rateCovariance: readonly (readonly number[])[];
  readonly calibrations: number;
  readonly degreesOfFreedom: number;
  /** max(1, √(χ²/ν)): above 1 the values scatter more than their uncertainties say; 1 where ν is 0. */
  readonly scatterFactor: number;
  /** Mean standard uncertainty of a calibration, as the weights see it. */
  readonly meanUncertainty: number;
};

export type PredictedDrift = {
  readonly expected: number;
  readonly standardUncertainty: number;
  /** Of the interval with the probability asked for, by Student's t where the scatter set the width. */
  readonly halfWidth: number;
};

/**
 * Straight-line drift from at least two calibrations, weighted by 1/u² (ILAC-G24:2022 / OIML D 10 on histories, from
 * memory; least squares as in JCGM 100:2008, H.3). Errors that all calibrations share (one laboratory, one origin) drop
 * out of a rate: give u without them. Against years and hours at once it takes three calibrations, used unevenly.
 * Problems: `too-few`; `not-applicable` for an uncertainty not above zero; `not-finite`; `no-solution` when all were at
 * one time, or use followed the calendar so closely that the two causes cannot be told apart.
 */
export function driftFromHistory(
  history: readonly CalibrationRecord[],
  against: DriftCause,
): Outcome<DriftFit> {
  const least = against === "years-and-hours" ? 3 : 2;
  if (history.length < least) {
    return refused("too-few", `drift against ${against} needs ${least} calibrations, not ${history.length}`);
  }
  const uncertainties = history.map(({ standardUncertainty }) => standardUncertainty);
  if (!uncertainties.every((u) => u > 0)) {
    return refused("not-applicable", "each calibration needs a standard uncertainty above zero");
  }
  const weights = uncertainties.map((u) => 1 / (u * u));
  const fit = leastSquares(
    history.map((record) => [1, ...timesOf(record, against)]),
    history.map(({ value }) => value),
    weights,
  );
  if (!fit.ok) return fit;
  const { coefficients, inverseNormal, chiSquare, degreesOfFreedom } = fit.value;
  const rates = coefficients.slice(1) as [number, ...number[]];
  const last = rates.at(-1) as number;
  return found({
    against,
    perYear: against === "hours" ? 0 : rates[0],
    perHour: against === "years" ? 0 : last,
    rateCovariance: inverseNormal.slice(1).map((row) => row.slice(1)),
    calibrations: history.length,
    degreesOfFreedom,
    scatterFactor: degreesOfFreedom > 0 ? Math.max(1, Math.sqrt(chiSquare / degreesOfFreedom)) : 1,
    meanUncertainty: Math.sqrt(history.length / sum(weights)),
  });
}

function timesOf({ years, hours }: Elapsed, against: DriftCause): number[] {
  if (against === "years") return [years];
  return against === "hours" ? [hours] : [years, hours];
}

/**
 * Drift expected since the last calibration after `elapsed`, with its interval: u² = f²·Δᵀ·C·Δ + (f² − 1)·ū², f the
 * scatter factor and ū the mean calibration uncertainty: the second term is what this standard wanders beyond a straight
 * line (a choice of this engine, no source). Half-width t_p(ν)·u where f > 1, else z_p·u. Unit: that of the values.
 * Problems: `not-finite`; `outside-range` for a time below zero or a probability beyond 0 to 1.
 */
export function predictDrift(fit: DriftFit, elapsed: Elapsed, probability: number): Outcome<PredictedDrift> {
  const { years, hours } = elapsed;
  if (!Number.isFinite(years) || !Number.isFinite(hours))
    return refused("not-finite", "a time is not a number");
  if (years < 0 || hours < 0) return refused("outside-range", "the time since the calibration is below zero");
  if (!(probability > 0 && probability < 1)) {
    return refused("outside-range", `probability ${probability}: between 0 and 1`);
  }
  const times = timesOf(elapsed, fit.against);
  const variance = sum(
    fit.rateCovariance.flatMap((row, i) =>
      row.map((c, j) => c * (times[i] as number) * (times[j] as number)),
    ),
  );
  const square = fit.scatterFactor * fit.scatterFactor;
  const wander = (square - 1) * fit.meanUncertainty * fit.meanUncertainty;
  const standardUncertainty = Math.sqrt(Math.max(0, square * variance) + wander);
  // So many degrees of freedom that Student and normal agree to 1e-9.
  const freedom = fit.scatterFactor > 1 ? fit.degreesOfFreedom : 1e9;
  return found({
    expected: fit.perYear * years + fit.perHour * hours,
    standardUncertainty,
    halfWidth: studentQuantile(probability, freedom) * standardUncertainty,
  });
}
