import type { EvaluatedContribution, MeasuredPoint } from "./evaluation";

export type PointEffect = Pick<
  EvaluatedContribution,
  "key" | "label" | "distribution" | "degreesOfFreedom"
> & {
  /** On the emf at the nominal, µV, with its sign. */
  readonly effect: number;
};

/** The inputs of a point's both budgets as one list in µV. A hotter furnace means less emf at the nominal. */
export function pointEffects(point: MeasuredPoint): PointEffect[] {
  const inMicrovolt = (scale: number) => (line: EvaluatedContribution) => ({
    key: line.key,
    label: line.label,
    distribution: line.distribution,
    degreesOfFreedom: line.degreesOfFreedom,
    effect: scale * line.effect,
  });
  const isInput = ({ kind }: EvaluatedContribution): boolean => kind === "input";
  return [
    ...point.temperatureBudget.contributions
      .filter(isInput)
      .map(inMicrovolt(-point.seebeckMicrovoltPerCelsius)),
    ...point.emfBudget.contributions.filter(isInput).map(inMicrovolt(1)),
  ];
}
