import { ok, type Result, refuse } from "../refusal";
import type { CharacterisationFigures, FiguresAtTemperature } from "./characterisation-figures";
import type { CharacterisationPlan } from "./characterisation-plan";
import type { SurveyEvaluation } from "./evaluate-survey";
import { figuresStatement, largest } from "./figures-statement";
import { neededKinds, surveyKindLabels } from "./survey-kinds";

/** A survey as stored, in the order they were recorded: of one kind and temperature the last one counts. */
export type EvaluatedSurvey = { readonly celsius: number; readonly evaluation: SurveyEvaluation };

export type EvaluatedCharacterisation = {
  readonly figures: CharacterisationFigures;
  readonly statement: string;
  /** For whoever asks for one figure: the largest axial and the largest position half-width together. */
  readonly uniformityHalfWidthCelsius: number;
};

const lastOf = <K extends SurveyEvaluation["kind"]>(
  surveys: readonly EvaluatedSurvey[],
  celsius: number,
  kind: K,
): Extract<SurveyEvaluation, { kind: K }> | null => {
  const found = surveys.findLast((one) => one.celsius === celsius && one.evaluation.kind === kind);
  return found ? (found.evaluation as Extract<SurveyEvaluation, { kind: K }>) : null;
};

const figuresAt = (
  plan: CharacterisationPlan,
  surveys: readonly EvaluatedSurvey[],
  celsius: number,
): FiguresAtTemperature => {
  const axial = lastOf(surveys, celsius, "axial");
  const positions = lastOf(surveys, celsius, "positions");
  const stability = lastOf(surveys, celsius, "stability");
  const immersion = lastOf(surveys, celsius, "immersion");
  return {
    celsius,
    axial: axial && {
      halfWidthCelsius: axial.halfRangeCelsius,
      standardCelsius: axial.standardUncertainty,
      fullRangeCelsius: axial.fullRangeCelsius,
      fromMillimetre: plan.fromMillimetre,
      toMillimetre: plan.toMillimetre,
    },
    positions: positions && {
      halfWidthCelsius: positions.halfRangeCelsius,
      standardCelsius: positions.standardUncertainty,
      fullRangeCelsius: positions.fullRangeCelsius,
      places: positions.places.map(({ place, celsius: against }) => ({ place, celsius: against })),
    },
    stability: stability && {
      halfWidthCelsius: stability.halfWidthCelsius,
      standardCelsius: stability.standardUncertainty,
      windowMinutes: stability.windowMinutes,
    },
    immersion: immersion && {
      halfWidthCelsius: immersion.halfDifferenceCelsius,
      standardCelsius: immersion.standardUncertainty,
      bestMillimetre: immersion.bestMillimetre,
      fromMillimetre: immersion.fromMillimetre,
      toMillimetre: immersion.toMillimetre,
    },
  };
};

/** What is still to be measured, a sentence each: "Stability over time at 700 °C". */
export const missingSurveys = (
  plan: CharacterisationPlan,
  surveys: readonly { readonly celsius: number; readonly kind: string }[],
): readonly string[] =>
  plan.temperatures.flatMap((celsius) =>
    neededKinds
      .filter((kind) => !surveys.some((one) => one.celsius === celsius && one.kind === kind))
      .map((kind) => `${surveyKindLabels[kind]} at ${celsius} °C`),
  );

/** All surveys of a characterisation together: figures at each planned temperature, or what is still to be measured. */
export const evaluateCharacterisation = (
  number: string,
  plan: CharacterisationPlan,
  surveys: readonly EvaluatedSurvey[],
): Result<EvaluatedCharacterisation> => {
  const missing = missingSurveys(
    plan,
    surveys.map(({ celsius, evaluation }) => ({ celsius, kind: evaluation.kind })),
  );
  if (missing.length > 0)
    return refuse("rule", `Still to be measured: ${missing.join("; ")}. Nothing was submitted.`);
  const figures: CharacterisationFigures = {
    number,
    lengthMillimetre: plan.toMillimetre - plan.fromMillimetre,
    range: "half",
    temperatures: plan.temperatures.map((celsius) => figuresAt(plan, surveys, celsius)),
  };
  return ok({
    figures,
    statement: figuresStatement(figures),
    uniformityHalfWidthCelsius: largest(figures, "axial") + largest(figures, "positions"),
  });
};
