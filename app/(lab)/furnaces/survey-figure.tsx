import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import type { CharacterisationPlan } from "@/lib/domain/furnace/characterisation-plan";
import type { SurveyEvaluation } from "@/lib/domain/furnace/evaluate-survey";
import { readingInCelsius } from "@/lib/domain/furnace/reading-in-celsius";
import type { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import type { BoreView } from "@/lib/drawing/load-view";
import { positionsMap } from "@/lib/drawing/positions-map";
import { profilePlot } from "@/lib/drawing/profile-plot";
import type { Drawing } from "@/lib/drawing/scene";
import { stabilityStrip } from "@/lib/drawing/stability-strip";

type Props = {
  readonly plan: CharacterisationPlan;
  readonly celsius: number;
  readonly readings: SurveyReadings;
  readonly evaluation: SurveyEvaluation;
  readonly bores: readonly BoreView[];
  readonly boreMillimetre: number;
};

type Draw = (width: number) => Drawing;

const drawAxial = ({ plan, celsius, evaluation }: Props): Draw | null =>
  evaluation.kind === "axial"
    ? (width) =>
        profilePlot(
          {
            title: `Profile along the tube at ${celsius} °C`,
            against: "against the mean of the stated length",
            points: evaluation.points,
            expandedCelsius: 2 * evaluation.standardUncertainty,
            fromMillimetre: plan.fromMillimetre,
            toMillimetre: plan.toMillimetre,
          },
          width,
        )
    : null;

const drawImmersion = ({ celsius, evaluation }: Props): Draw | null =>
  evaluation.kind === "immersion"
    ? (width) =>
        profilePlot(
          {
            title: `Immersion at ${celsius} °C`,
            against: "against the best depth",
            points: evaluation.depths.map(({ isWithin, ...depth }) => ({ ...depth, isInside: isWithin })),
            expandedCelsius: 2 * evaluation.standardUncertainty,
            fromMillimetre: evaluation.fromMillimetre,
            toMillimetre: evaluation.toMillimetre,
          },
          width,
        )
    : null;

const drawPositions = ({ celsius, evaluation, bores, boreMillimetre }: Props): Draw | null =>
  evaluation.kind === "positions"
    ? (width) =>
        positionsMap(
          {
            title: `Positions at ${celsius} °C`,
            places: evaluation.places.map((one) => ({
              place: one.place,
              celsius: one.celsius,
              expandedCelsius: 2 * one.standardUncertainty,
            })),
            bores,
            boreMillimetre,
          },
          width,
        )
    : null;

const drawStability = ({ plan, celsius, readings, evaluation }: Props): Draw | null => {
  if (evaluation.kind !== "stability" || readings.kind !== "stability") return null;
  const inCelsius = readings.rows.flatMap(({ minutes, value }) => {
    const read = readingInCelsius(value, readings.unit, plan.monitorType, readings.junctionCelsius);
    return typeof read === "number" ? [{ minutes, celsius: read }] : [];
  });
  return (width) =>
    stabilityStrip(
      {
        title: `Stability at ${celsius} °C`,
        readings: inCelsius,
        windowMinutes: evaluation.windowMinutes,
        fromMinutes: evaluation.changeFromMinutes,
        changeCelsius: evaluation.changeCelsius,
      },
      width,
    );
};

const captions: Readonly<Record<SurveyEvaluation["kind"], string>> = {
  axial: "Shaded: the stated length. Band: U of the half range, k = 2. Open rings lie outside of the length.",
  immersion: "Shaded: within the limit of the best depth. Band: U of the half difference, k = 2.",
  positions: "Seen from the mouth of the tube; differences from the centre in °C.",
  stability: "Shaded: the window in which the monitor changed most.",
};

/** A survey seen: profile, map or strip, each with its table. */
export function SurveyFigure(props: Props) {
  const draw = drawAxial(props) ?? drawImmersion(props) ?? drawPositions(props) ?? drawStability(props);
  return draw ? (
    <DrawingFigure drawing={draw(640)} narrow={draw(340)} caption={captions[props.evaluation.kind]} />
  ) : null;
}
