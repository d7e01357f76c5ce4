import { loadReviewRun } from "@/lib/data/review/load-review-run";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { defaultFunctionChoice, fitSensor } from "@/lib/domain/evidence/fit-sensor";
import type { Actor } from "@/lib/domain/staff/actor";
import { correctionAt } from "@/lib/metrology/deviation/correction-at";
import { type CorrectionTable, correctionTable } from "@/lib/metrology/deviation/correction-table";
import { deviationAt } from "@/lib/metrology/deviation/deviation-at";
import type { DeviationFunction } from "@/lib/metrology/deviation/deviation-function";
import {
  type PrintedCoefficients,
  printedCoefficients,
} from "@/lib/metrology/deviation/printed-coefficients";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
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
      readonly curve: readonly {
        readonly celsius: number;
        readonly value: number;
        readonly expanded: number;
      }[];
      readonly table: CorrectionTable;
      readonly coefficients: PrintedCoefficients;
    };

const none = (reason: string): Fitted => ({ kind: "none", reason });

const CURVE_STEPS = 60;

const curveOf = (fitted: DeviationFunction, coverageFactor: number) =>
  Array.from({ length: CURVE_STEPS + 1 }, (_, index) => {
    const celsius = fitted.fromCelsius + ((fitted.toCelsius - fitted.fromCelsius) * index) / CURVE_STEPS;
    const at = deviationAt(fitted, celsius);
    return at.ok
      ? [{ celsius, value: at.value.value, expanded: coverageFactor * at.value.standardUncertainty }]
      : [];
  }).flat();

/** As many decimals as U has at the middle of the range, so that a correction and its U end alike. */
const decimalsOf = (
  fitted: DeviationFunction,
  reference: ReferenceFunction,
  coverageFactor: number,
  digits: 1 | 2,
): number => {
  const middle = correctionAt(fitted, reference, (fitted.fromCelsius + fitted.toCelsius) / 2);
  if (!middle.ok) return 1;
  const reported = reportValue(0, coverageFactor * middle.value.standardUncertaintyCelsius, digits);
  return reported.ok ? Math.min(3, Math.max(0, reported.value.decimals)) : 1;
};

const functionOf = (
  points: readonly MeasuredPoint[],
  digits: 1 | 2,
  choice: { readonly unit: "celsius" | "fahrenheit"; readonly step: number },
): Fitted => {
  const first = points[0];
  if (!first) return none("No setpoint of this sensor was measured.");
  const fitted = fitSensor(points);
  if (!fitted.ok) return none(`No function: ${fitted.problem.message}.`);
  const reference = referenceFunctions[first.type];
  // The largest k of the points: never a narrower band than any of them has.
  const coverageFactor = Math.max(...points.map((point) => point.coverageFactor));
  const table = correctionTable({
    deviation: fitted.value,
    reference,
    ...choice,
    decimals: decimalsOf(fitted.value, reference, coverageFactor, digits),
    coverageFactor,
  });
  if (!table.ok) return none(`No table: ${table.problem.message}.`);
  return {
    kind: "fitted",
    fitted: fitted.value,
    coverageFactor,
    curve: curveOf(fitted.value, coverageFactor),
    table: table.value,
    coefficients: printedCoefficients(fitted.value, reference, table.value),
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
    const { sensors, rounding } = evaluation.head;
    const digits = sensors.find(({ id }) => id === tag)?.uncertaintyDigits ?? rounding.uncertaintyDigits;
    return {
      number,
      tag,
      serial: sensor.serial,
      typeLetter: sensor.typeLetter,
      customer: sensor.line.order.customer.name,
      setpoints: review.run.setpoints.map(({ position }) => position),
      choice: { unit, step: choice.step } as const,
      rule: defaultFunctionChoice,
      result: functionOf(points, digits, { unit, step: choice.step }),
    };
  });

export type SensorFunctionPage = Awaited<ReturnType<typeof sensorFunctionView>>;
