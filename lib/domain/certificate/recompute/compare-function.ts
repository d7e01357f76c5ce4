import { typeset } from "@/lib/metrology/reporting/typeset";
import type { EvaluatedFunction } from "../../evidence/evaluation";
import type { CertificateFunction } from "../content";
import { type Comparison, compareFigures } from "./comparison";

const plainCelsius = (celsius: number): string => typeset(String(Number(celsius.toFixed(2))));

/** Range, k, coefficients and table of a deviation function beside the one fitted again. */
export const compareFunction = (
  table: string,
  printed: CertificateFunction,
  again: EvaluatedFunction | undefined,
): readonly Comparison[] => [
  ...compareFigures(
    { table, row: "Function" },
    {
      "From, °C": printed.fromCelsius,
      "To, °C": printed.toCelsius,
      k: printed.coverageFactor,
      Degree: String(printed.degree),
      Rows: String(printed.rows.length),
    },
    again
      ? {
          "From, °C": plainCelsius(again.fitted.fromCelsius),
          "To, °C": plainCelsius(again.fitted.toCelsius),
          k: again.table.coverageFactor.toFixed(2),
          Degree: String(again.fitted.degree),
          Rows: String(again.table.rows.length),
        }
      : {},
  ),
  ...printed.coefficients.flatMap(({ power, value, unit }) =>
    compareFigures(
      { table, row: `a${power}` },
      { [unit]: value },
      { [unit]: again?.coefficients.texts[power] },
    ),
  ),
  ...printed.rows.flatMap(({ temperature, correction, expanded }, at) => {
    const row = again?.table.rows[at];
    return compareFigures(
      { table, row: `${temperature} ${printed.unit}` },
      { Temperature: temperature, Correction: correction, U: expanded },
      row
        ? {
            Temperature: typeset(String(row.degrees)),
            Correction: typeset(row.printedCorrection),
            U: typeset(row.printedExpanded),
          }
        : {},
    );
  }),
];
