import { fahrenheitText } from "@/lib/metrology/reporting/fahrenheit";
import { reportInFahrenheit } from "@/lib/metrology/reporting/report-in-fahrenheit";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { MeasuredPoint } from "../evidence/evaluation";
import { reportedCelsius } from "../evidence/point-scope";
import type { CertificateRow } from "./content";

type FahrenheitRow = NonNullable<CertificateRow["fahrenheit"]>;

/** Digits of U as it is printed in °C: the same many in °F. */
const digitsOf = (printed: string): 1 | 2 =>
  printed.replace(/[^\d]/g, "").replace(/^0+/, "").length >= 2 ? 2 : 1;

const decimalsOf = (printed: string): number => printed.split(".")[1]?.length ?? 0;

/** A difference of so many °C in °F, with these decimals, as it is printed. */
export const fahrenheitDifference = (celsius: number, decimals: number): string => {
  const text = fahrenheitText(celsius, decimals, "difference");
  if (!text.ok) throw new Error(text.problem.message);
  return typeset(text.value);
};

/** Of a figure stated in °C, in whole: 1.8 times it needs one decimal more, and nothing is rounded. */
const exactly = (celsius: number, printed: string): string =>
  fahrenheitDifference(celsius, decimalsOf(printed) + 1);

/**
 * A result in the unit it was ordered in: from the unrounded figures, rounded once, value and U together (JCGM 100:2008,
 * 7.2.6). Decided is in °C; in °F the same is shown.
 */
export const fahrenheitRow = (point: MeasuredPoint, statesConformity: boolean): FahrenheitRow => {
  const { printed, conformity, scope } = point;
  const error = reportInFahrenheit(
    point.errorCelsius,
    reportedCelsius(scope, point.expandedCelsius),
    digitsOf(printed.expandedCelsius),
    "difference",
    scope.capabilityCelsius,
  );
  const reference = fahrenheitText(point.referenceCelsius, decimalsOf(printed.referenceCelsius), "value");
  if (!error.ok || !reference.ok) throw new Error("a printed result is a number in every unit");
  const { tolerance, acceptanceCelsius } = conformity;
  const limits = statesConformity && tolerance !== null && conformity.printed.tolerance !== null;
  return {
    reference: typeset(reference.value),
    error: typeset(error.value.value),
    correction: fahrenheitDifference(-point.errorCelsius, error.value.decimals),
    expanded: typeset(error.value.expanded),
    ...(limits ? { tolerance: `± ${exactly(tolerance.celsius, conformity.printed.tolerance ?? "")}` } : {}),
    ...(limits && acceptanceCelsius !== null
      ? { acceptance: `± ${fahrenheitDifference(acceptanceCelsius, Math.max(0, error.value.decimals) + 2)}` }
      : {}),
  };
};
