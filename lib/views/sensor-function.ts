import { loadReviewRun } from "@/lib/data/review/load-review-run";
import type { ScopedTable } from "@/lib/domain/evidence/evaluation";
import { defaultFunctionChoice, type FunctionChoice } from "@/lib/domain/evidence/function-choice";
import { type CurvePoint, functionCurve } from "@/lib/domain/evidence/function-curve";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import { sensorFunction } from "@/lib/domain/evidence/sensor-function";
import type { Actor } from "@/lib/domain/staff/actor";
import type { DeviationFunction } from "@/lib/metrology/deviation/deviation-function";
import type { PrintedCoefficients } from "@/lib/metrology/deviation/printed-coefficients";
import { answer, found } from "./view";

export type TableChoice = {
  /** As ordered unless told. */
  readonly unit: "celsius" | "fahrenheit" | null;
  readonly step: number;
};

type Fitted =
  | { readonly kind: "none"; readonly reason: string }
  | {
      readonly kind: "fitted";
      readonly fitted: DeviationFunction;
      readonly coverageFactor: number;
      readonly curve: readonly CurvePoint[];
      readonly table: ScopedTable;
      readonly coefficients: PrintedCoefficients;
    };

const none = (reason: string): Fitted => ({ kind: "none", reason });

const functionOf = (asked: Parameters<typeof sensorFunction>[0]): Fitted => {
  if (asked.points.length === 0) return none("No setpoint of this sensor was measured.");
  const evaluated = sensorFunction(asked);
  if (!evaluated.ok) return none(`No function: ${evaluated.problem.message}.`);
  const { fitted, coverageFactor, table, coefficients } = evaluated.value;
  return {
    kind: "fitted",
    fitted,
    coverageFactor,
    curve: functionCurve(fitted, coverageFactor),
    table,
    coefficients,
  };
};

/** The deviation function of one sensor of a run, from the points of its last evaluation. */
export const sensorFunctionView = (actor: Actor, number: string, tag: string, choice: TableChoice) =>
  answer(actor, "review.read", async (tx) => {
    const run = found(await tx.run.findUnique({ where: { number }, select: { id: true } }));
    const review = found(await loadReviewRun(tx, run.id));
    const sensor = found(review.sensors.find((candidate) => candidate.tag === tag));
    const evaluation = found(review.evaluation);
    const points = evaluation.results
      .filter(({ sensorId }) => sensorId === sensor.id)
      .flatMap(({ point }) => (point.state === "measured" ? [point] : []))
      .sort((a, b) => a.nominalCelsius - b.nominalCelsius);
    const ordered = sensor.line.temperatureUnit === "F" ? "fahrenheit" : "celsius";
    const unit = choice.unit ?? ordered;
    const { sensors, rounding, scope } = evaluation.head;
    const head = sensors.find(({ id }) => id === tag);
    // As the evidence asks for it, so that the page shows the function that the certificate carries.
    const rule: FunctionChoice = head?.deviationFunction ?? defaultFunctionChoice;
    return {
      number,
      tag,
      serial: sensor.serial,
      typeLetter: sensor.typeLetter,
      customer: sensor.line.order.customer.name,
      setpoints: review.run.setpoints.map(({ position }) => position),
      choice: { unit, step: choice.step } as const,
      rule,
      isScopeStated: scope !== undefined,
      result: functionOf({
        sensor: tag,
        type: TypeLetter.parse(sensor.typeLetter),
        points,
        choice: rule,
        table: { unit, step: choice.step },
        digits: head?.uncertaintyDigits ?? rounding.uncertaintyDigits,
        scope,
      }),
    };
  });

export type SensorFunctionPage = Awaited<ReturnType<typeof sensorFunctionView>>;
