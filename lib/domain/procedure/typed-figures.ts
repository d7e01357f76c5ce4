import type { BudgetInputs } from "../run/budget-inputs";
import { type BudgetLine, budgetLines, correlationPlaces } from "./budget-lines";
import type { Figures, LineFigure } from "./figures-schema";

const lineFigure = (place: string, line: BudgetLine): LineFigure => {
  switch (line.kind) {
    case "standard":
      return { place, kind: line.kind, value: line.standard, unit: line.unit, source: line.source };
    case "rectangular":
      return { place, kind: line.kind, value: line.halfWidth, unit: line.unit, source: line.source };
    case "expanded":
      return { place, kind: line.kind, value: line.expanded, unit: line.unit, source: line.source };
    case "zero":
      return { place, kind: line.kind, value: null, unit: "celsius", source: line.reason };
    case "tolerance-share":
      return {
        place,
        kind: line.kind,
        value: line.share,
        unit: `class-${line.toleranceClass}`,
        source: line.source,
      };
    default:
      return { place, kind: "keep", value: null, unit: "celsius", source: line.source };
  }
};

type Correlated = BudgetInputs["correlation"];
const correlationAt = ({ references, ...others }: Correlated) => ({
  voltmeter: others.voltmeter,
  junction: others.junction,
  "references.calibration": references.calibration,
  "references.drift": references.drift,
  "references.own": references.own,
});

/** The budget's inputs as their form shows them; sent back as they are, they change nothing. */
export const typedFigures = (budget: BudgetInputs): Figures => {
  const { zero, carryOrder } = budget.comparison;
  const correlations = correlationAt(budget.correlation);
  return {
    lines: budgetLines(budget).map(({ place, line }) => lineFigure(place, line)),
    correlations: correlationPlaces.map(([place]) => ({ place, ...correlations[place] })),
    coverage: budget.coverage,
    comparison:
      zero.kind === "none"
        ? { zero: "none", reason: zero.reason, carryOrder }
        : { zero: "shorted-channel", channel: zero.channel, carryOrder },
    deviationFunction: {
      rule: "keep",
      degree: null,
      limit: null,
      isThroughZero: false,
      method: "propagated",
    },
  };
};
