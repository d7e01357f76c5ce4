import { roundHalfEven, scaledInteger, writeDecimal } from "../number/decimal";
import { found, type Outcome, refused } from "../outcome";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { type CorrectionAt, correctionAt } from "./correction-at";
import type { DeviationFunction } from "./deviation-function";

export type CorrectionTableInput = {
  readonly deviation: DeviationFunction;
  readonly reference: ReferenceFunction;
  readonly unit: "celsius" | "fahrenheit";
  /** Whole degrees of the unit between rows; rows stand at its multiples. */
  readonly step: number;
  /** Decimals of the printed correction and U. */
  readonly decimals: number;
  /** U = k·u. */
  readonly coverageFactor: number;
};

export type CorrectionRow = CorrectionAt & {
  /** The row's whole temperature in the table's unit. */
  readonly degrees: number;
  /** In the table's unit: a difference, so 1.8 × that in °C, and never with 32 added. */
  readonly correction: number;
  readonly expanded: number;
  readonly printedCorrection: string;
  /** Rounded up: what is printed never claims more than was found. */
  readonly printedExpanded: string;
};

export type CorrectionTable = {
  readonly unit: CorrectionTableInput["unit"];
  readonly step: number;
  readonly decimals: number;
  readonly coverageFactor: number;
  readonly rows: readonly CorrectionRow[];
};

const SLACK_DEGREES = 1e-9;
const MOST_ROWS = 5000;
const MOST_DECIMALS = 6;

/**
 * Corrections and U at the whole multiples of a step within the function's range, in °C or °F: t_C = (t_F − 32)·5/9, and
 * a correction of 1 °C is one of 1.8 °F (definition of the degree Fahrenheit; NIST SP 811:2008, B.8, from memory).
 * Problems: `not-applicable` for a step that is not whole, decimals beyond 0 to 6, k not above 0, or more than 5000 rows;
 * `too-few` when no row lies within the range; those of `correctionAt`.
 */
export function correctionTable(input: CorrectionTableInput): Outcome<CorrectionTable> {
  const { deviation, reference, unit, step, decimals, coverageFactor } = input;
  if (!(step >= 1 && Math.floor(step) === step)) {
    return refused("not-applicable", `step ${step}: a whole number of degrees, 1 or more`);
  }
  if (!(decimals >= 0 && decimals <= MOST_DECIMALS && Math.floor(decimals) === decimals)) {
    return refused("not-applicable", `${decimals} decimals: a whole number from 0 to ${MOST_DECIMALS}`);
  }
  if (!(coverageFactor > 0 && Number.isFinite(coverageFactor))) {
    return refused("not-applicable", `coverage factor ${coverageFactor}: a number above 0`);
  }
  const first = Math.ceil((inUnit(deviation.fromCelsius, unit) - SLACK_DEGREES) / step);
  const last = Math.floor((inUnit(deviation.toCelsius, unit) + SLACK_DEGREES) / step);
  if (last < first) return refused("too-few", `no multiple of ${step}° lies within the function's range`);
  if (last - first >= MOST_ROWS)
    return refused("not-applicable", `more than ${MOST_ROWS} rows: a wider step`);
  const rows: CorrectionRow[] = [];
  for (let n = first; n <= last; n += 1) {
    const degrees = n * step;
    const at = correctionAt(deviation, reference, unit === "celsius" ? degrees : ((degrees - 32) * 5) / 9);
    if (!at.ok) return at;
    rows.push(row(at.value, degrees, input));
  }
  return found({ unit, step, decimals, coverageFactor, rows });
}

function inUnit(celsius: number, unit: CorrectionTableInput["unit"]): number {
  return unit === "celsius" ? celsius : (celsius * 9) / 5 + 32;
}

function row(at: CorrectionAt, degrees: number, input: CorrectionTableInput): CorrectionRow {
  const { decimals } = input;
  const correction = differenceIn(at.correctionCelsius, input.unit);
  const expanded = differenceIn(at.standardUncertaintyCelsius * input.coverageFactor, input.unit);
  return {
    ...at,
    degrees,
    correction,
    expanded,
    printedCorrection: roundHalfEven(correction, decimals),
    printedExpanded: writeDecimal(scaledInteger(expanded, decimals, "away"), decimals, false),
  };
}

/** A difference of temperatures in °C in the unit of a table (source: `correctionTable`). No error cases; NaN stays NaN. */
export function differenceIn(celsius: number, unit: CorrectionTableInput["unit"]): number {
  return unit === "celsius" ? celsius : (celsius * 9) / 5;
}
