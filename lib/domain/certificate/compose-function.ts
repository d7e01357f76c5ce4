import { typeset } from "@/lib/metrology/reporting/typeset";
import type { EvaluatedFunction, ScopedRow } from "../evidence/evaluation";
import { functionCurve } from "../evidence/function-curve";
import { type Draft, given, type Said, say, sayAll } from "./catalogue/message";
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

const remark = ({ scope, isBelowMeasured }: ScopedRow): Said => {
  const said = [
    ...(scope.state === "outside" ? [say("function.row-outside")] : []),
    ...(isBelowMeasured ? [say("function.row-below")] : []),
  ];
  return said.length === 0 ? "" : sayAll(said, "; ");
};

const methods = {
  propagated: say("function.propagated"),
  "own-plus-common": say("function.own-plus-common"),
} as const;

/** What the function is, where it holds and what U of its table is; `source`: of the points' reference functions. */
const statement = ({ fitted, table }: EvaluatedFunction, source: Said): readonly Said[] => {
  const { fromCelsius, toCelsius, below, isThroughZero } = fitted;
  return [
    say(isThroughZero ? "function.definition-zero" : "function.definition", {
      formula: formula(fitted.degree, isThroughZero),
      source,
      count: String(fitted.points.length),
      from: plainCelsius(fromCelsius),
      to: plainCelsius(toCelsius),
    }),
    say("function.correction", {
      k: table.coverageFactor.toFixed(2),
      method: methods[fitted.uncertaintyMethod],
    }),
    ...(fitted.isDegreeRuleMet ? [] : [say("function.degree")]),
    ...(below ? [say("function.below", { agreement: given(below.agreement) })] : []),
    ...(table.rows.some(({ scope }) => scope.isRaised) ? [say("function.capability")] : []),
  ];
};

/** The deviation function as a certificate carries it: numbers are the printed strings of the evaluation. */
export const composeFunction = (evaluated: EvaluatedFunction, source: Said): Draft<CertificateFunction> => {
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
