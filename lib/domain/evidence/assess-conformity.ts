import { decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { Sensor } from "./bench";
import type { EvaluatedConformity } from "./evaluation";
import type { DecisionRule } from "./schema";
import { toleranceAt, toleranceWords } from "./tolerance-at";

export type ConformityQuestion = {
  readonly sensor: Sensor;
  readonly nominalCelsius: number;
  readonly errorCelsius: number;
  readonly standardUncertaintyCelsius: number;
  readonly expandedCelsius: number;
  /** Effective, of u: the probability, and a guard band from a target risk, take Student's t with them; null: normal. */
  readonly degreesOfFreedom: number | null;
  readonly rule: DecisionRule;
};

/** A statement only where a tolerance was ordered and a rule agreed; decided on unrounded values. */
export function assessConformity(question: ConformityQuestion): EvaluatedConformity {
  const { sensor, rule } = question;
  const nothing = {
    tolerance: null,
    acceptanceCelsius: null,
    probability: null,
    printed: { tolerance: null, probability: null },
  };
  if (sensor.tolerance === null || rule.kind === "none") return { state: "no-statement", ...nothing };
  const limit = toleranceAt(sensor.tolerance, sensor.type, question.nominalCelsius);
  if (limit.kind === "not-defined") return { state: "no-tolerance-defined", ...nothing };
  const judged = decideConformity({
    ...question,
    toleranceCelsius: limit.celsius,
    rule,
  });
  const asked = { ...toleranceWords(sensor.tolerance), celsius: limit.celsius };
  // A number that cannot be judged gets no statement; `decideConformity` names the reason, the budget shows it.
  if (!judged.ok) return { state: "not-decidable", ...nothing, tolerance: asked };
  const decision = judged.value;
  return {
    state: decision.verdict,
    tolerance: asked,
    acceptanceCelsius: decision.acceptanceCelsius,
    probability: decision.probability,
    printed: {
      tolerance: printTolerance(limit.celsius),
      probability: printProbability(decision.probability),
    },
  };
}

/** At most four decimals (0.75 % of 333 °C has them), at least one. */
function printTolerance(celsius: number): string {
  return typeset(roundHalfEven(celsius, 4).replace(/(\.\d+?)0+$/, "$1"));
}

/** Certainty is never printed: the ends of the scale are bounds. */
function printProbability(probability: number): string {
  const percent = probability * 100;
  if (percent >= 99.95) return "> 99.9 %";
  if (percent < 0.05) return "< 0.1 %";
  return `${roundHalfEven(percent, 1)} %`;
}
