import { evaluateEvidence } from "../evidence/evaluate";
import type { MeasuredPoint } from "../evidence/evaluation";
import { type AskedPoint, type Bench, idealRun, referencesFor } from "./ideal-run";

export type ExpectedUncertainty =
  | {
      readonly kind: "expected";
      readonly standardUncertaintyCelsius: number;
      readonly expandedCelsius: number;
      readonly degreesOfFreedom: number | null;
      /** The line that weighs most, in the trade's words: "Sensor inhomogeneity". */
      readonly dominant: string;
      /** Where: "Tube furnace 1, bundle of eight". */
      readonly configuration: string;
    }
  /** `reason` is a whole sentence. */
  | { readonly kind: "unknown"; readonly reason: string };

const unknown = (reason: string): ExpectedUncertainty => ({ kind: "unknown", reason });

/**
 * The U that a point can be expected to have, before anything is measured: the evaluation of a run without any error, with
 * today's procedure, standards and characterisations. Of several configurations the one that gives the smallest U.
 */
export const expectedUncertainty = (benches: readonly Bench[], asked: AskedPoint): ExpectedUncertainty => {
  const reaching = benches.filter(
    ({ minimumCelsius, maximumCelsius }) =>
      asked.celsius >= minimumCelsius && asked.celsius <= maximumCelsius,
  );
  if (reaching.length === 0)
    return unknown(
      "No furnace configuration with a characterisation and calibrated standards reaches this temperature.",
    );
  const each = reaching.map((bench) => onBench(bench, asked));
  const expected = each.filter((one) => one.kind === "expected");
  const [first, ...others] = expected;
  if (!first) return each[0] as ExpectedUncertainty;
  return others.reduce((best, one) => (one.expandedCelsius < best.expandedCelsius ? one : best), first);
};

const onBench = (bench: Bench, asked: AskedPoint): ExpectedUncertainty => {
  const { budget } = bench;
  const inputs = budget.sensors[asked.typeLetter];
  if (!inputs) return unknown(`${budget.procedure} has no budget for type ${asked.typeLetter}.`);
  if (inputs.repeatability.kind === "block-means" || budget.referenceRepeatability.kind === "block-means")
    return unknown("The procedure takes repeatability from the run's own readings, which are not there yet.");
  const references = referencesFor(bench, asked.celsius);
  if (references.length === 0) return unknown("No reference in service is certified at this temperature.");
  const run = idealRun(bench, references, asked);
  if (run === null) return unknown("A reference function is not defined at this temperature.");
  const outcome = evaluateEvidence(run);
  if (!outcome.ok) return unknown(outcome.problems.map(({ message }) => message).join(" "));
  const [point] = outcome.evaluation.points;
  return point?.state === "measured"
    ? ofPoint(point, `${bench.configuration.furnace}, ${bench.configuration.name}`)
    : unknown("The point was not evaluated.");
};

const ofPoint = (point: MeasuredPoint, configuration: string): ExpectedUncertainty => {
  const slope = point.seebeckMicrovoltPerCelsius;
  const lines = [...point.emfBudget.contributions, ...point.temperatureBudget.contributions];
  return {
    kind: "expected",
    standardUncertaintyCelsius: point.combinedMicrovolt / slope,
    expandedCelsius: point.expandedCelsius,
    degreesOfFreedom: point.degreesOfFreedom,
    dominant: lines.find(({ key }) => key === point.dominant)?.label ?? point.dominant,
    configuration,
  };
};
