import type { Budget, EvaluatedContribution, MeasuredPoint } from "./evaluation";

export type PointEffect = Pick<
  EvaluatedContribution,
  "key" | "label" | "distribution" | "degreesOfFreedom"
> & {
  /** On the emf at the nominal, µV, with its sign. */
  readonly effect: number;
};

/** Standard uncertainties in place of the evaluated ones, by the key of the line, each in its line's unit. */
export type OtherUncertainties = Readonly<Record<string, number>>;

/**
 * The inputs of a point's both budgets as one list in µV, each with another u where one is given. A hotter furnace
 * means less emf at the nominal.
 */
export function pointEffects(point: MeasuredPoint, others: OtherUncertainties = {}): PointEffect[] {
  const inMicrovolt = (scale: number) => (line: EvaluatedContribution) => {
    const other = others[line.key];
    return {
      key: line.key,
      label: line.label,
      distribution: line.distribution,
      degreesOfFreedom: line.degreesOfFreedom,
      effect: scale * (other === undefined ? line.effect : line.sensitivity * other),
    };
  };
  return [
    ...inputLines(point.temperatureBudget).map(inMicrovolt(-point.seebeckMicrovoltPerCelsius)),
    ...inputLines(point.emfBudget).map(inMicrovolt(1)),
  ];
}

/** The lines of a budget that state an input; the other stage and the covariance follow from them. */
export function inputLines(budget: Budget): readonly EvaluatedContribution[] {
  return budget.contributions.filter(({ kind }) => kind === "input");
}
