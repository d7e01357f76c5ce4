import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { EvaluatedPoint } from "../../evidence/evaluation";
import { acceptance } from "../compose-rows";
import type { CertificateRow } from "../content";
import { fahrenheitRow } from "../fahrenheit-row";
import { type Comparison, compareFigures } from "./comparison";

const columns = {
  nominalCelsius: "Nominal, °C",
  referenceCelsius: "Reference, °C",
  emfMicrovolt: "Emf, µV",
  deviationMicrovolt: "Deviation, µV",
  expandedMicrovolt: "U, µV",
  errorCelsius: "Error, °C",
  correctionCelsius: "Correction, °C",
  expandedCelsius: "U, °C",
  coverageFactor: "k",
} as const satisfies Partial<Record<keyof CertificateRow, string>>;

type Column = keyof typeof columns;
const columnKeys = Object.keys(columns) as readonly Column[];

type Figures = Readonly<Record<string, string>>;

const named = (figures: Readonly<Record<Column, string>>): Figures =>
  Object.fromEntries(columnKeys.map((key) => [columns[key], figures[key]]));

const statedIn = (row: CertificateRow): Figures => ({
  State: row.state,
  ...named(row),
  ...(row.scope ? { Scope: row.scope } : {}),
  ...(row.conformity.state === "no-statement"
    ? {}
    : {
        Conformity: row.conformity.state,
        Tolerance: row.conformity.tolerance,
        Probability: row.conformity.probability,
        ...(row.conformity.acceptance ? { "Acceptance limit": row.conformity.acceptance } : {}),
      }),
  ...inFahrenheit(row.fahrenheit),
});

const inFahrenheit = (row: CertificateRow["fahrenheit"]): Figures =>
  row
    ? {
        "Reference, °F": row.reference,
        "Error, °F": row.error,
        "Correction, °F": row.correction,
        "U, °F": row.expanded,
        ...(row.tolerance ? { "Tolerance, °F": row.tolerance } : {}),
        ...(row.acceptance ? { "Acceptance limit, °F": row.acceptance } : {}),
      }
    : {};

const plain = (celsius: number): string => String(Number(celsius.toFixed(2)));

const computed = (point: EvaluatedPoint): Figures => {
  if (point.state !== "measured")
    return {
      State: point.state,
      ...Object.fromEntries(columnKeys.map((key) => [columns[key], ""])),
      [columns.nominalCelsius]: plain(point.nominalCelsius),
    };
  const { tolerance, probability } = point.conformity.printed;
  return {
    State: point.state,
    ...named(point.printed),
    ...(point.scope.state === "not-stated" ? {} : { Scope: point.scope.state }),
    Conformity: point.conformity.state,
    Tolerance: tolerance ? `± ${tolerance}` : "",
    Probability: probability ?? "",
    "Acceptance limit": acceptance(point).acceptance ?? "",
    // Only what the row prints of it is asked for.
    ...inFahrenheit(fahrenheitRow(point, true)),
  };
};

/** As a row prints its nominal, whichever state it is in. */
const nominalOf = (point: EvaluatedPoint): string =>
  point.state === "measured"
    ? point.printed.nominalCelsius
    : typeset(String(Number(roundHalfEven(point.nominalCelsius, 2))));

const sameNominal = (row: CertificateRow, point: EvaluatedPoint): boolean =>
  row.nominalCelsius === nominalOf(point) || row.nominalCelsius === plain(point.nominalCelsius);

/** Each printed figure of a table of results beside the evaluation's; a row that the evaluation lacks has none. */
export const compareRows = (
  table: string,
  rows: readonly CertificateRow[],
  points: readonly EvaluatedPoint[],
): readonly Comparison[] =>
  rows.flatMap((row) => {
    const point = points.find((one) => sameNominal(row, one));
    return compareFigures({ table, row: row.setpoint }, statedIn(row), point ? computed(point) : {});
  });
