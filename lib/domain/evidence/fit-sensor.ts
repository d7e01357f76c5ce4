import type { DeviationFunction } from "@/lib/metrology/deviation/deviation-function";
import { fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { type PointLine, pointCovariance } from "@/lib/metrology/deviation/point-covariance";
import type { Outcome } from "@/lib/metrology/outcome";
import type { LineKey } from "./budget-lines";
import type { MeasuredPoint } from "./evaluation";
import { defaultFunctionChoice, type FunctionChoice } from "./function-choice";
import { pointEffects } from "./point-effects";

/**
 * Lines drawn anew at every setpoint. All others act on every point of a run with one error, and do not average away:
 * certificate and drift of the reference, meter, junction, lead, the places in the furnace, both inhomogeneities.
 */
export const ownLines: ReadonlySet<string> = new Set<LineKey>([
  "reference.repeatability",
  "reference.interpolation",
  "voltmeter.resolution@reference",
  "scanner.parasitic@reference",
  "furnace.stability",
  "sensor.repeatability",
  "voltmeter.resolution@sensor",
  "scanner.parasitic@sensor",
]);

/**
 * The effects with correlated pairs taken apart: what the second line shares with the first moves over to it, the
 * rest √(1 − r²) stays its own. Then lines are independent of each other, and each is one error across the points.
 */
const independentEffects = (point: MeasuredPoint): ReadonlyMap<string, number> => {
  const effects = new Map<string, number>(pointEffects(point).map(({ key, effect }) => [key, effect]));
  for (const { first, second, coefficient: r } of point.shared) {
    const other = effects.get(second) ?? 0;
    effects.set(first, (effects.get(first) ?? 0) + r * other);
    effects.set(second, Math.sqrt(Math.max(0, 1 - r * r)) * other);
  }
  return effects;
};

/**
 * The deviation function of one sensor through its measured points (emf at the nominal minus the reference function,
 * µV), with the full covariance of the points' budgets. Problems: those of `fitDeviation` and `pointCovariance`, such as
 * too few setpoints.
 */
export const fitSensor = (
  points: readonly MeasuredPoint[],
  choice: FunctionChoice = defaultFunctionChoice,
): Outcome<DeviationFunction> => {
  const effects = points.map(independentEffects);
  const keys = [...new Set(effects.flatMap((one) => [...one.keys()]))];
  const lines: PointLine[] = keys.map((key) => ({
    key,
    isShared: !ownLines.has(key),
    effects: effects.map((one) => one.get(key) ?? 0),
  }));
  const covariance = pointCovariance(lines);
  if (!covariance.ok) return covariance;
  const { own } = covariance.value;
  return fitDeviation({
    quantity: "emf",
    points: points.map(({ nominalCelsius, deviationMicrovolt }, index) => ({
      celsius: nominalCelsius,
      value: deviationMicrovolt,
      own: own[index] as number,
    })),
    covariance: covariance.value.covariance,
    isThroughZero: choice.isThroughZero,
    degreeRule: choice.degreeRule,
    uncertaintyMethod: choice.method,
    scatter: "larger",
    allowBelow: choice.allowBelow,
  });
};
