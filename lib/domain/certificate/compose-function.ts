import { typeset } from "@/lib/metrology/reporting/typeset";
import type { EvaluatedFunction, ScopedRow } from "../evidence/evaluation";
import { functionCurve } from "../evidence/function-curve";
import type { CertificateFunction } from "./content";

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const powerOf = (quantity: string, power: number): string =>
  power === 1 ? quantity : `${quantity}${superscripts[power]}`;
const coefficientUnit = (power: number): string => (power === 0 ? "µV" : `µV/${powerOf("°C", power)}`);
const plainCelsius = (celsius: number): string => typeset(String(Number(celsius.toFixed(2))));
const units = { celsius: "°C", fahrenheit: "°F" } as const;

const formula = (degree: number, isThroughZero: boolean): string =>
  Array.from({ length: degree + 1 }, (_, power) =>
    power === 0 ? (isThroughZero ? [] : ["a0"]) : [`a${power}·${powerOf("t", power)}`],
  )
    .flat()
    .join(" + ");

const remark = ({ scope, isBelowMeasured }: ScopedRow): string =>
  [
    ...(scope.state === "outside" ? ["Outside the accredited scope"] : []),
    ...(isBelowMeasured ? ["Below the lowest measured point"] : []),
  ].join("; ");

const methods = {
  propagated: "from the whole covariance of the points through the fit",
  "own-plus-common":
    "from each point's own part through the fit, with the part that all points share taken unreduced",
} as const;

/** What the function is, where it holds and what U of its table is; `source`: of the points' reference functions. */
const statement = ({ fitted, table }: EvaluatedFunction, source: string): string[] => {
  const { fromCelsius, toCelsius, below } = fitted;
  return [
    `D(t) = ${formula(fitted.degree, fitted.isThroughZero)}: deviation of the emf in µV from the reference function of the type in ` +
      `${source}, t in °C, reference junction at 0 °C; fitted by weighted least squares to the ${fitted.points.length} measured points` +
      `${fitted.isThroughZero ? " and through 0 µV at 0 °C" : ""}. It holds from ${plainCelsius(fromCelsius)} °C to ${plainCelsius(toCelsius)} °C.`,
    `Correction: to be added to the indication. U is with k = ${table.coverageFactor.toFixed(2)}, the largest of the results, and comes ` +
      `${methods[fitted.uncertaintyMethod]}; it is rounded up.`,
    ...(fitted.isDegreeRuleMet
      ? []
      : [
          "No degree that the procedure allows follows the points within its limit; their scatter about the curve is in U.",
        ]),
    ...(below ? [`Below the lowest measured point as agreed: ${below.agreement}.`] : []),
    ...(table.rows.some(({ scope }) => scope.isRaised)
      ? [
          "Where U as computed is smaller than the laboratory's calibration and measurement capability, that is stated in its place.",
        ]
      : []),
  ];
};

/** The deviation function as a certificate carries it: numbers are the printed strings of the evaluation. */
export const composeFunction = (evaluated: EvaluatedFunction, source: string): CertificateFunction => {
  const { fitted, table, coefficients } = evaluated;
  return {
    degree: fitted.degree,
    isThroughZero: fitted.isThroughZero,
    coefficients: coefficients.texts.map((value, power) => ({ power, value, unit: coefficientUnit(power) })),
    fromCelsius: plainCelsius(fitted.fromCelsius),
    toCelsius: plainCelsius(fitted.toCelsius),
    unit: units[table.unit],
    coverageFactor: table.coverageFactor.toFixed(2),
    rows: table.rows.map((row) => ({
      temperature: typeset(String(row.degrees)),
      correction: typeset(row.printedCorrection),
      expanded: typeset(row.printedExpanded),
      remark: remark(row),
    })),
    statements: statement(evaluated, source),
    plot: {
      curve: functionCurve(fitted, evaluated.coverageFactor),
      points: fitted.points.map(({ celsius, value, fitted: onCurve }) => ({
        celsius,
        value,
        fitted: onCurve,
      })),
    },
  };
};
