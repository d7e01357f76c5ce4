import { decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import type { RuleUncertainty } from "@/lib/metrology/conformity/guard-band";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { typeset } from "@/lib/metrology/reporting/typeset";
import { combineAndCover } from "./combine-and-cover";
import type { ConformityState, EvaluatedContribution, MeasuredPoint } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { inputLines, type OtherUncertainties, pointEffects } from "./point-effects";
import type { DecisionRule } from "./schema";

export type WhatIf = {
  readonly expandedCelsius: number;
  /** As it would be printed. */
  readonly printedCelsius: string;
  readonly coverageFactor: number;
  /** What holds the largest part of u_c², with that part: 0.25 is a quarter. */
  readonly dominant: { readonly label: string; readonly share: number };
  readonly conformity: ConformityState;
};

/** The lines that state an input, both stages together: what may be changed. */
export const changeableLines = (point: MeasuredPoint): readonly EvaluatedContribution[] => [
  ...inputLines(point.temperatureBudget),
  ...inputLines(point.emfBudget),
];

/**
 * What U, coverage and conformity would be with other uncertainties, nothing else changed: the same combination
 * (JCGM 100:2008, 5.2.2 and G.4.1) as the evaluation's own. Nothing is stored.
 */
export const whatIf = (
  point: MeasuredPoint,
  changes: OtherUncertainties,
  { rule, digits }: { readonly rule: DecisionRule; readonly digits: 1 | 2 },
): EvidenceOutcome<WhatIf> => {
  const effects = pointEffects(point, changes);
  const combined = combineAndCover(effects, point.shared, point.coverage.policy);
  if (!combined.ok) return missing("changes", combined.problem.message);
  const { standardUncertainty, degreesOfFreedom, coverageFactor } = combined.value;
  const largest = effects.reduce((a, b) => (Math.abs(b.effect) > Math.abs(a.effect) ? b : a));
  if (!(standardUncertainty > 0))
    return missing("changes", "Every contribution is zero: a result without uncertainty is none.");
  const standard = standardUncertainty / point.seebeckMicrovoltPerCelsius;
  const expandedCelsius = coverageFactor * standard;
  // As the evaluation does: U never below the capability, and u of the statement raised with it.
  const { capabilityCelsius } = point.scope;
  const reported = Math.max(expandedCelsius, capabilityCelsius ?? 0);
  const printed = reportValue(point.errorCelsius, reported, digits, capabilityCelsius);
  if (!printed.ok) return missing("changes", printed.problem.message);
  return got({
    expandedCelsius,
    printedCelsius: typeset(printed.value.expanded),
    coverageFactor,
    dominant: {
      label: largest.label,
      share: (largest.effect * largest.effect) / (standardUncertainty * standardUncertainty),
    },
    conformity: conformityWith(point, rule, {
      standardUncertaintyCelsius: standard * (reported / expandedCelsius),
      expandedCelsius: reported,
      degreesOfFreedom,
    }),
  });
};

function conformityWith(
  point: MeasuredPoint,
  rule: DecisionRule,
  uncertainty: RuleUncertainty,
): ConformityState {
  const { tolerance, state } = point.conformity;
  if (tolerance === null || rule.kind === "none") return state;
  const decision = decideConformity({
    ...uncertainty,
    errorCelsius: point.errorCelsius,
    toleranceCelsius: tolerance.celsius,
    rule,
  });
  return decision.ok ? decision.value.verdict : "not-decidable";
}
