import type { Outcome } from "@/lib/metrology/outcome";
import { found } from "@/lib/metrology/outcome";
import type { Combined } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import type { Correlation } from "@/lib/metrology/uncertainty/correlation-factor";
import {
  type Coverage,
  type CoverageEffect,
  chooseCoverage,
  dominantPolicy,
  studentPolicy,
} from "@/lib/metrology/uncertainty/coverage";
import {
  TWO_SIGMA_PROBABILITY,
  truncatedDegreesOfFreedom,
} from "@/lib/metrology/uncertainty/coverage-factor";
import { budgetInputs } from "@/lib/metrology/uncertainty/monte-carlo/budget-inputs";
import { coverageByMonteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/coverage-by-monte-carlo";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { monteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import type { EvaluatedContribution, EvaluatedCoverage, SharedError } from "./evaluation";

/** One line's signed effect on the result, with what its distribution is called. */
export type KeyedEffect = CoverageEffect & {
  readonly key: string;
  readonly label?: string;
  readonly distribution: EvaluatedContribution["distribution"];
};

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
  const chosen =
    policy === "monte-carlo"
      ? coverageByDrawing(effects, correlations, standardUncertainty)
      : chooseCoverage(
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

/** Enough that k is settled to about 0.01; the seed is fixed, so that evaluating again gives the same k. */
const TRIALS = 100_000;
const SEED = 1;

/** k of the budget drawn line by line. Drawn about zero: the estimate shifts both ends alike. */
function coverageByDrawing(
  effects: readonly KeyedEffect[],
  correlations: readonly Correlation[],
  standardUncertainty: number,
): Outcome<Coverage> {
  const sampler = linearSampler(0, budgetInputs(effects), correlations);
  if (!sampler.ok) return sampler;
  const drawn = monteCarlo(
    sampler.value,
    {
      seed: SEED,
      stream: 0,
      probability: TWO_SIGMA_PROBABILITY,
      trials: { kind: "fixed", count: TRIALS },
    },
    new Float64Array(TRIALS),
  );
  return drawn.ok ? coverageByMonteCarlo(drawn.value, 0, standardUncertainty) : drawn;
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
