import { found, type Outcome, refused } from "../outcome";

/** A rate of drift and the half-width within which it is known, in one unit (µV or °C) per year or per hour of use. */
export type DriftRate = { readonly rate: number; readonly halfWidth: number };

/** One of the two is zero with half-width zero where the other covers it: age and use are easily counted twice. */
export type DriftRates = { readonly perYear: DriftRate; readonly perHour: DriftRate };

/** Since the calibration: years, and hours of use (of platinum, hours above the temperature that the rate names). */
export type Elapsed = { readonly years: number; readonly hours: number };

export type ExpectedDrift = {
  /** Added to the certificate's deviation where the laboratory corrects for drift. */
  readonly expected: number;
  /** Rectangular; where the drift is not corrected, |expected| belongs to it as well: `uncorrectedHalfWidth`. */
  readonly halfWidth: number;
  readonly uncorrectedHalfWidth: number;
};

/**
 * Drift against dates and hours of use from stated rates: expected = r_y·years + r_h·hours; half-widths added, not in
 * quadrature, as what ages a thermocouple and what uses it up need not be independent (common practice, no source; the
 * line δt_D of EA-4/02 S5). Unit: that of the rates.
 * Problems: `not-finite`; `outside-range` for time or hours before the calibration, or a half-width below zero.
 */
export function expectedDrift(rates: DriftRates, elapsed: Elapsed): Outcome<ExpectedDrift> {
  const { perYear, perHour } = rates;
  const { years, hours } = elapsed;
  const all = [perYear.rate, perYear.halfWidth, perHour.rate, perHour.halfWidth, years, hours];
  if (!all.every(Number.isFinite)) return refused("not-finite", "a rate of drift or a time is not a number");
  if (years < 0 || hours < 0) return refused("outside-range", "the time since the calibration is below zero");
  if (perYear.halfWidth < 0 || perHour.halfWidth < 0) {
    return refused("outside-range", "the half-width of a rate of drift is below zero");
  }
  const expected = perYear.rate * years + perHour.rate * hours;
  const halfWidth = perYear.halfWidth * years + perHour.halfWidth * hours;
  return found({ expected, halfWidth, uncorrectedHalfWidth: Math.abs(expected) + halfWidth });
}
