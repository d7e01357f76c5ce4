import type { Outcome } from "@/lib/metrology/outcome";
import { found } from "@/lib/metrology/outcome";
import type { Combined } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import {
  type Coverage,
  type CoverageEffect,
  chooseCoverage,
  dominantPolicy,
  studentPolicy,
} from "@/lib/metrology/uncertainty/coverage";
import { truncatedDegreesOfFreedom } from "@/lib/metrology/uncertainty/coverage-factor";
import type { EvaluatedCoverage, SharedError } from "./evaluation";

/** One line's signed effect on the result, with what its distribution is called. */
export type KeyedEffect = CoverageEffect & { readonly key: string; readonly label?: string };

export type CombinedAndCovered = Combined & {
  readonly coverageFactor: number;
  readonly coverage: EvaluatedCoverage;
};

/**
 * u_c, ν_eff and k of a list of signed effects in one unit, with the pairs that one error moves. The one way a
 * point's uncertainty is combined: the evaluation and every "what if" go through here.
 */
export function combineAndCover(
  all: readonly KeyedEffect[],
  shared: readonly SharedError[],
  policy: EvaluatedCoverage["policy"],
): Outcome<CombinedAndCovered> {
  const effects = all.filter(({ effect }) => effect !== 0);
  const placeOf = (key: string): number => effects.findIndex((line) => line.key === key);
  const correlations = shared
    .map(({ first, second, coefficient }) => ({
      first: placeOf(first),
      second: placeOf(second),
      coefficient,
    }))
    .filter(({ first, second, coefficient }) => first >= 0 && second >= 0 && coefficient !== 0);
  const combined = combineCorrelated(effects, correlations);
  if (!combined.ok) return combined;
  const { standardUncertainty, degreesOfFreedom } = combined.value;
  const chosen = chooseCoverage(
    effects,
    correlations,
    combined.value,
    policy === "dominant" ? dominantPolicy : studentPolicy,
  );
  if (!chosen.ok) return chosen;
  const { kind: method, factor, probability } = chosen.value;
  return found({
    standardUncertainty,
    degreesOfFreedom,
    coverageFactor: factor,
    coverage: { policy, method, probability, criterion: criterionOf(chosen.value, effects) },
  });
}

const percent = (probability: number): string => `${Number((probability * 100).toFixed(2))} %`;
const two = (value: number): string => value.toFixed(2);

/** The criterion with its numbers, for whoever reads the budget. */
function criterionOf(coverage: Coverage, effects: readonly KeyedEffect[]): string {
  const name = (place: number): string => effects[place]?.label ?? effects[place]?.key ?? "";
  switch (coverage.kind) {
    case "student": {
      const { degreesOfFreedom: nu } = coverage;
      const freedom = nu === null ? "infinitely many" : `${truncatedDegreesOfFreedom(nu)}`;
      return `Student's t at ${percent(coverage.probability)} with ${freedom} effective degrees of freedom`;
    }
    case "one-dominant-rectangle":
      return `rectangular result: u of all else is ${two(coverage.ratio)} of “${name(coverage.dominant)}”, at most ${coverage.limit}; ${percent(coverage.probability)}`;
    case "two-dominant-rectangles": {
      const [one, other] = coverage.dominant;
      return `trapezoidal result (β = ${two(coverage.beta)}): u of all else is ${two(coverage.ratio)} of “${name(one)}” and “${name(other)}” together, at most ${coverage.limit}; ${percent(coverage.probability)}`;
    }
    case "monte-carlo":
      return `Monte Carlo, ${coverage.trials} trials, seed ${coverage.seed}; ${percent(coverage.probability)}`;
  }
}
