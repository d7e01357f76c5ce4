import type { Bench } from "./bench";
import type { EvaluatedFunction, EvaluatedPoint, EvidenceFinding } from "./evaluation";
import type { Evidence } from "./schema";
import { defaultTable, sensorFunction } from "./sensor-function";
import { sensorScope } from "./sensor-scope";

export type EvaluatedFunctions = {
  readonly functions: readonly EvaluatedFunction[];
  /** Why a function that was asked for is not there: it does not stop the evaluation of the points. */
  readonly findings: readonly EvidenceFinding[];
};

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
    const evaluated = sensorFunction({
      sensor: mounted.item.id,
      type: mounted.item.type,
      points: own,
      choice,
      table: choice.table ?? defaultTable,
      digits,
      scope: sensorScope(evidence.scope, mounted.item),
    });
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
