import { roundHalfEven } from "../number/decimal";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { correctionAt } from "./correction-at";
import { type CorrectionTable, differenceIn } from "./correction-table";
import type { DeviationFunction } from "./deviation-function";

export type PrintedCoefficients = {
  readonly significantDigits: number;
  /** Index = power, e.g. "-1.234e-3": JavaScript's own notation, for a document to typeset. */
  readonly texts: readonly string[];
};

/**
 * The coefficients with as few significant digits as give every printed row of a correction table again, so that whoever
 * evaluates the printed polynomial finds the printed table. At most 17 digits, which name a float64 exactly (IEEE 754:
 * 2008, 5.12.2). Units: those of the function's coefficients. `table` must be of this function and type; no error cases.
 */
export function printedCoefficients(
  deviation: DeviationFunction,
  reference: ReferenceFunction,
  table: CorrectionTable,
): PrintedCoefficients {
  for (let significantDigits = 1; ; significantDigits += 1) {
    const texts = deviation.coefficients.map((a) => a.toExponential(significantDigits - 1));
    const rounded = { ...deviation, coefficients: texts.map(Number) };
    const isSame = table.rows.every(({ celsius, printedCorrection }) => {
      const at = correctionAt(rounded, reference, celsius);
      if (!at.ok) return false;
      return (
        roundHalfEven(differenceIn(at.value.correctionCelsius, table.unit), table.decimals) ===
        printedCorrection
      );
    });
    if (isSame || significantDigits === 17) return { significantDigits, texts };
  }
}
