import { scaledDifference } from "../../metrology/quality/normalized-error";
import type { CertificateRow } from "../certificate/content";
import type { ResultSet } from "./sets-of";

/** One certificate's result at one setpoint, with how it differs from the one before. */
export type HistoryPoint = {
  readonly certificate: string;
  readonly performedOn: string;
  readonly set: ResultSet["set"];
  readonly setpoint: string;
  /** As on the certificate. */
  readonly error: string;
  readonly expanded: string;
  readonly errorCelsius: number;
  readonly expandedCelsius: number;
  /** As the certificate marks it; undefined: it says nothing of a scope. */
  readonly scope: CertificateRow["scope"];
  /** null: the first at this setpoint. */
  readonly change: {
    readonly celsius: number;
    /** The expanded uncertainty of the change, both taken as independent: √(U₁² + U₂²). */
    readonly expandedCelsius: number;
    /** |change| greater than its U: more than both uncertainties explain. */
    readonly isMore: boolean;
  } | null;
};

export type HistorySeries = {
  readonly nominalCelsius: number;
  readonly setpoint: string;
  readonly points: readonly HistoryPoint[];
};

type Past = Pick<ResultSet, "certificate" | "performedTo" | "rows" | "set">;

const root = (value: number): number => Math.sqrt(value);

/**
 * How one result differs from an earlier one. Both rest on one laboratory's standards, which makes their difference
 * known better than this says: what is marked is then certain, what is not marked may still be a change.
 */
const changeBetween = (
  earlier: Pick<HistoryPoint, "errorCelsius" | "expandedCelsius">,
  later: Pick<HistoryPoint, "errorCelsius" | "expandedCelsius">,
): HistoryPoint["change"] => {
  const scaled = scaledDifference(
    { value: later.errorCelsius, uncertainty: later.expandedCelsius },
    { value: earlier.errorCelsius, uncertainty: earlier.expandedCelsius },
    0,
  );
  const { expandedCelsius: u } = earlier;
  const { expandedCelsius: v } = later;
  return {
    celsius: later.errorCelsius - earlier.errorCelsius,
    expandedCelsius: root(u * u + v * v),
    isMore: scaled.ok && Math.abs(scaled.value) > 1,
  };
};

/** The errors a sensor had at each setpoint, from its sets of results, the oldest first. Figures as they were printed. */
export const sensorHistory = (sets: readonly Past[]): readonly HistorySeries[] => {
  const series = new Map<number, { setpoint: string; points: HistoryPoint[] }>();
  const past = sets.toSorted(
    (a, b) =>
      a.performedTo.localeCompare(b.performedTo, "en") || a.certificate.localeCompare(b.certificate, "en"),
  );
  for (const { certificate, performedTo, set, rows } of past)
    for (const row of rows) {
      const errorCelsius = Number(row.errorCelsius.replace("\u2212", "-"));
      const expandedCelsius = Number(row.expandedCelsius);
      const nominal = Number(row.nominalCelsius.replace("\u2212", "-"));
      if (row.state !== "measured" || row.errorCelsius === "" || row.expandedCelsius === "") continue;
      if (![errorCelsius, expandedCelsius, nominal].every(Number.isFinite)) continue;
      const known = series.get(nominal) ?? { setpoint: row.setpoint, points: [] };
      const before = known.points.at(-1);
      known.points.push({
        certificate,
        performedOn: performedTo,
        set,
        setpoint: row.setpoint,
        error: row.errorCelsius,
        expanded: row.expandedCelsius,
        errorCelsius,
        expandedCelsius,
        scope: row.scope,
        change: before ? changeBetween(before, { errorCelsius, expandedCelsius }) : null,
      });
      series.set(nominal, known);
    }
  return [...series]
    .map(([nominalCelsius, { setpoint, points }]) => ({ nominalCelsius, setpoint, points }))
    .toSorted((a, b) => a.nominalCelsius - b.nominalCelsius);
};
