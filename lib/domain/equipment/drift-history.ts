import { predictDrift } from "@/lib/metrology/quality/predict-drift";
import { suggestInterval } from "@/lib/metrology/quality/suggest-interval";
import { driftFromHistory } from "@/lib/metrology/standard/drift-from-history";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { rangeOfFindings } from "../calibration/calibrated-range";
import { certifiedTemperatures } from "../calibration/certified-temperatures";
import type { FindingsOf } from "../calibration/findings";
import { referenceCorrectionOf } from "../calibration/reference-correction-of";
import { deviationOf } from "../evidence/reference-correction";
import type { ParticularsOf } from "./particulars";

/** One accepted calibration, with the hours above 1000 °C it had been used for by then. */
export type Calibrated = {
  readonly certificate: string;
  /** ISO day. */
  readonly performedOn: string;
  readonly hours: number;
  readonly findings: FindingsOf<"reference">;
};

export type DriftPoint = Omit<Calibrated, "findings"> & {
  /** E_ref − E_table less what the first calibration found, as a temperature. */
  readonly changeCelsius: number;
  /** U of this calibration, °C. */
  readonly expandedCelsius: number;
};

export type DriftSeries = { readonly celsius: number; readonly points: readonly DriftPoint[] };

/** What the history suggests; advice for a person, no rule. */
export type DriftAdvice = {
  readonly celsius: number;
  readonly perYear: { readonly rate: number; readonly standardUncertainty: number } | null;
  readonly perThousandHours: { readonly rate: number; readonly standardUncertainty: number } | null;
  /** Where the next calibration is expected to find it, a year after the last. */
  readonly inAYear: { readonly low: number; readonly high: number } | null;
  /** Days until the whole of that expectation leaves ± the drift of the record. */
  readonly interval: { readonly days: number; readonly endedBy: "drift" | "maximum" } | null;
  readonly why: string;
};

const DAYS_IN_A_YEAR = 365.25;
const LONGEST_DAYS = 1096;
const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;

/** Temperatures of the last certificate that every earlier one covers: nothing is compared beyond a certificate's range. */
const commonTemperatures = (calibrations: readonly Calibrated[]): readonly number[] => {
  const last = calibrations.at(-1);
  if (!last) return [];
  const ranges = calibrations.map(({ findings }) => rangeOfFindings(findings));
  return certifiedTemperatures(last.findings).filter((celsius) =>
    ranges.every((range) => range !== null && celsius >= range.fromCelsius && celsius <= range.toCelsius),
  );
};

/** Change of a reference at temperatures its calibrations share; calibrations in order of time, two or more. */
export const driftHistory = (
  type: ParticularsOf<"reference">["type"],
  calibrations: readonly Calibrated[],
): readonly DriftSeries[] => {
  if (calibrations.length < 2) return [];
  const reference = referenceFunctions[type];
  return commonTemperatures(calibrations).flatMap((celsius) => {
    const slope = seebeck(reference, celsius);
    if (!slope.ok || !(slope.value > 0)) return [];
    const deviations = calibrations.map(
      ({ findings }) => deviationOf(referenceCorrectionOf(findings), reference)(celsius).value,
    );
    const points = calibrations.map(
      ({ findings, certificate, performedOn, hours }, index): DriftPoint => ({
        certificate,
        performedOn,
        hours,
        changeCelsius: ((deviations[index] as number) - (deviations[0] as number)) / slope.value,
        expandedCelsius: findings.unit === "celsius" ? findings.expanded : findings.expanded / slope.value,
      }),
    );
    return points.every(({ changeCelsius }) => Number.isFinite(changeCelsius)) ? [{ celsius, points }] : [];
  });
};

type Rated = { readonly rate: number; readonly standardUncertainty: number };

const rateOf = (
  series: DriftSeries,
  against: "years" | "hours",
  factors: readonly number[],
): Rated | null => {
  const first = dayNumber(series.points[0]?.performedOn ?? "");
  const fit = driftFromHistory(
    series.points.map(({ performedOn, hours, changeCelsius, expandedCelsius }, index) => ({
      years: (dayNumber(performedOn) - first) / DAYS_IN_A_YEAR,
      hours,
      value: changeCelsius,
      standardUncertainty: expandedCelsius / (factors[index] as number),
    })),
    against,
  );
  if (!fit.ok) return null;
  const { perYear, perHour, rateCovariance, scatterFactor } = fit.value;
  const standardUncertainty = scatterFactor * Math.sqrt(rateCovariance[0]?.[0] ?? 0);
  return against === "years"
    ? { rate: perYear, standardUncertainty }
    : { rate: 1000 * perHour, standardUncertainty: 1000 * standardUncertainty };
};

/** What the highest common temperature tells of rates, of the next calibration and of a fit interval. */
export const driftAdvice = (
  series: DriftSeries,
  coverageFactors: readonly number[],
  allowedCelsius: number,
): DriftAdvice => {
  const history = series.points.map(({ performedOn, changeCelsius }) => ({
    at: dayNumber(performedOn),
    value: changeCelsius,
  }));
  const line = predictDrift(history);
  const interval = suggestInterval(history, allowedCelsius, LONGEST_DAYS);
  const last = history.at(-1)?.at ?? 0;
  const next = line.ok ? line.value.predict(last + DAYS_IN_A_YEAR) : null;
  return {
    celsius: series.celsius,
    perYear: rateOf(series, "years", coverageFactors),
    perThousandHours: rateOf(series, "hours", coverageFactors),
    inAYear: next && { low: next.low, high: next.high },
    interval: interval.ok
      ? { days: Math.floor(interval.value.interval), endedBy: interval.value.endedBy }
      : null,
    why: line.ok ? (interval.ok ? "" : interval.problem.message) : line.problem.message,
  };
};
