import { correctionAt } from "@/lib/metrology/deviation/correction-at";
import { correctionTable } from "@/lib/metrology/deviation/correction-table";
import type { DeviationFunction } from "@/lib/metrology/deviation/deviation-function";
import { printedCoefficients } from "@/lib/metrology/deviation/printed-coefficients";
import { found, type Outcome } from "@/lib/metrology/outcome";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import type { Bench, Mounted, Sensor } from "./bench";
import type { EvaluatedFunction, EvaluatedPoint, EvidenceFinding, MeasuredPoint } from "./evaluation";
import { fitSensor } from "./fit-sensor";
import type { DeviationFunctionChoice, Evidence } from "./schema";

export type EvaluatedFunctions = {
  readonly functions: readonly EvaluatedFunction[];
  /** Why a function that was asked for is not there: it does not stop the evaluation of the points. */
  readonly findings: readonly EvidenceFinding[];
};

const DEFAULT_TABLE = { unit: "celsius", step: 50 } as const;

/** The deviation function of each sensor that asks for one, through its measured points. */
export function evaluateFunctions(
  evidence: Evidence,
  bench: Bench,
  points: readonly EvaluatedPoint[],
): EvaluatedFunctions {
  const functions: EvaluatedFunction[] = [];
  const findings: EvidenceFinding[] = [];
  for (const mounted of bench.sensors) {
    const choice = mounted.item.deviationFunction;
    if (!choice) continue;
    const own = points
      .flatMap((point) => (point.state === "measured" && point.sensor === mounted.item.id ? [point] : []))
      .sort((a, b) => a.nominalCelsius - b.nominalCelsius);
    const digits = mounted.item.uncertaintyDigits ?? evidence.rounding.uncertaintyDigits;
    const evaluated = evaluateFunction(mounted, own, choice, digits);
    if (evaluated.ok) functions.push(evaluated.value);
    else {
      findings.push({
        code: "function-not-fitted",
        path: `${mounted.itemPath}.deviationFunction`,
        message: `Sensor ${mounted.item.id} has no deviation function: ${evaluated.problem.message}.`,
      });
    }
  }
  return { functions, findings };
}

function evaluateFunction(
  { item, reference }: Mounted<Sensor>,
  points: readonly MeasuredPoint[],
  choice: DeviationFunctionChoice,
  digits: 1 | 2,
): Outcome<EvaluatedFunction> {
  const fitted = fitSensor(points, choice);
  if (!fitted.ok) return fitted;
  // The largest k of the points: never a narrower band than any of them has.
  const coverageFactor = Math.max(...points.map((point) => point.coverageFactor));
  const table = correctionTable({
    deviation: fitted.value,
    reference,
    ...(choice.table ?? DEFAULT_TABLE),
    decimals: decimalsOf(fitted.value, reference, coverageFactor, digits),
    coverageFactor,
  });
  if (!table.ok) return table;
  return found({
    sensor: item.id,
    choice,
    coverageFactor,
    fitted: fitted.value,
    table: table.value,
    coefficients: printedCoefficients(fitted.value, reference, table.value),
  });
}

const MOST_DECIMALS = 3;

/** As many decimals as U has in the middle of the range, so that a correction and its U end alike. */
function decimalsOf(
  fitted: DeviationFunction,
  reference: ReferenceFunction,
  coverageFactor: number,
  digits: 1 | 2,
): number {
  const middle = correctionAt(fitted, reference, (fitted.fromCelsius + fitted.toCelsius) / 2);
  if (!middle.ok) return 1;
  const reported = reportValue(0, coverageFactor * middle.value.standardUncertaintyCelsius, digits);
  return reported.ok ? Math.min(MOST_DECIMALS, Math.max(0, reported.value.decimals)) : 1;
}
