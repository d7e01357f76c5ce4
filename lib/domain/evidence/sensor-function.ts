import {
  type CorrectionRow,
  type CorrectionTable,
  correctionTable,
  differenceIn,
} from "@/lib/metrology/deviation/correction-table";
import { printedCoefficients } from "@/lib/metrology/deviation/printed-coefficients";
import { roundHalfEven, scaledInteger, writeDecimal } from "@/lib/metrology/number/decimal";
import { found, type Outcome } from "@/lib/metrology/outcome";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { EvaluatedFunction, EvaluatedScope, MeasuredPoint, ScopedRow, ScopedTable } from "./evaluation";
import { fitSensor } from "./fit-sensor";
import type { FunctionChoice } from "./function-choice";
import { pointScope, reportedCelsius } from "./point-scope";
import type { Evidence, TypeLetter } from "./schema";

/** Where neither evidence nor reader asks for another. */
export const defaultTable = { unit: "celsius", step: 50 } as const;

type Asked = {
  readonly sensor: string;
  readonly type: TypeLetter;
  /** Of this sensor, ascending in temperature. */
  readonly points: readonly MeasuredPoint[];
  readonly choice: FunctionChoice;
  readonly table: { readonly unit: CorrectionTable["unit"]; readonly step: number };
  /** Significant digits of U as agreed: the most that any row of the table prints. */
  readonly digits: 1 | 2;
  readonly scope: Evidence["scope"];
};

/**
 * A sensor's deviation function with its correction table and printed coefficients: the one way to them, for the
 * evaluation, the review's page and the certificate. Problems: those of `fitSensor` and `correctionTable`.
 */
export function sensorFunction(asked: Asked): Outcome<EvaluatedFunction> {
  const { sensor, points, choice } = asked;
  const fitted = fitSensor(points, choice);
  if (!fitted.ok) return fitted;
  const reference = referenceFunctions[asked.type];
  // The largest k of the points: never a narrower band than any of them has.
  const coverageFactor = Math.max(...points.map((point) => point.coverageFactor));
  const unrounded = correctionTable({
    deviation: fitted.value,
    reference,
    ...asked.table,
    decimals: 0,
    coverageFactor,
  });
  if (!unrounded.ok) return unrounded;
  const table = printTable(unrounded.value, asked);
  if (!table.ok) return table;
  const coefficients = printedCoefficients(fitted.value, reference, table.value);
  return found({
    sensor,
    choice,
    coverageFactor,
    fitted: fitted.value,
    table: table.value,
    coefficients,
  });
}

/** Each row against the scope, and all rows printed to one last digit. */
function printTable(table: CorrectionTable, { type, digits, scope }: Asked): Outcome<ScopedTable> {
  const { unit } = table;
  const rows: { row: CorrectionRow; place: EvaluatedScope; reported: number }[] = [];
  for (const row of table.rows) {
    const expandedCelsius = row.standardUncertaintyCelsius * table.coverageFactor;
    const placed = pointScope(scope, type, row.celsius, expandedCelsius);
    if (!placed.ok) return placed;
    const place = placed.value;
    // As computed where nothing raises it, so that no conversion there and back touches a digit.
    const reported = place.isRaised
      ? differenceIn(reportedCelsius(place, expandedCelsius), unit)
      : row.expanded;
    rows.push({ row, place, reported });
  }
  const decimals = decimalsOf(Math.max(...rows.map(({ reported }) => reported)), digits);
  if (!decimals.ok) return decimals;
  return found({
    ...table,
    decimals: decimals.value,
    rows: rows.map(
      ({ row, place, reported }): ScopedRow => ({
        ...row,
        printedCorrection: roundHalfEven(row.correction, decimals.value),
        printedExpanded: writeDecimal(upwards(reported, decimals.value), decimals.value, false),
        scope: place,
      }),
    ),
  });
}

/** Rows are rounded up: what is printed claims neither less than was found nor less than the capability. */
const upwards = (expanded: number, decimals: number): bigint => scaledInteger(expanded, decimals, "away");

/**
 * Decimals of the largest U in the unit of the table at the agreed digits (ILAC-P14:09/2020, 5: at most two), so that
 * no smaller U has more. Negative: tens. Rounded up, 0.991 at two digits would print 1.00, so it is cut to 1.0.
 */
function decimalsOf(largest: number, digits: 1 | 2): Outcome<number> {
  const reported = reportValue(0, largest, digits);
  if (!reported.ok) return reported;
  const { decimals } = reported.value;
  return found(`${upwards(largest, decimals)}`.length > digits ? decimals - 1 : decimals);
}
