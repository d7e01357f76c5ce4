import { found, type Outcome } from "@/lib/metrology/outcome";
import { budgetInputs } from "@/lib/metrology/uncertainty/monte-carlo/budget-inputs";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { monteCarlo, type Trials } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import { type GumValidation, validateGum } from "@/lib/metrology/uncertainty/monte-carlo/validate-gum";
import type { MeasuredPoint } from "./evaluation";
import { pointEffects } from "./point-effects";

export type PointMonteCarlo = {
  readonly trials: number;
  readonly seed: number;
  /** Each point draws from a stream of its own. */
  readonly stream: number;
  readonly isSettled: boolean;
  readonly probability: number;
  readonly estimateMicrovolt: number;
  readonly standardUncertaintyMicrovolt: number;
  readonly symmetricMicrovolt: { readonly low: number; readonly high: number };
  readonly shortestMicrovolt: { readonly low: number; readonly high: number };
  /** Half the symmetric interval: what U would be. */
  readonly expandedMicrovolt: number;
  readonly expandedCelsius: number;
  /** JCGM 101:2008, clause 8, with two digits of u: whether the budget's own interval is borne out. */
  readonly gum: GumValidation;
};

export type MonteCarloChoice = { readonly seed: number; readonly trials: Trials };

const DIGITS = 2;

/** The point's own budget, its lines drawn from their distributions instead of combined. */
export function pointMonteCarlo(
  point: MeasuredPoint,
  stream: number,
  { seed, trials }: MonteCarloChoice,
  workspace: Float64Array,
): Outcome<PointMonteCarlo> {
  const effects = pointEffects(point);
  const placeOf = (key: string): number => effects.findIndex((line) => line.key === key);
  const correlations = point.shared.map(({ first, second, coefficient }) => ({
    first: placeOf(first),
    second: placeOf(second),
    coefficient,
  }));
  const estimate = point.emfAtNominalMicrovolt;
  const sampler = linearSampler(estimate, budgetInputs(effects), correlations);
  if (!sampler.ok) return sampler;
  const { probability } = point.coverage;
  const drawn = monteCarlo(sampler.value, { seed, stream, probability, trials }, workspace);
  if (!drawn.ok) return drawn;
  const { symmetric, shortest } = drawn.value;
  const budget = {
    estimate,
    standardUncertainty: point.combinedMicrovolt,
    expanded: point.expandedMicrovolt,
  };
  const gum = validateGum(budget, symmetric, DIGITS);
  if (!gum.ok) return gum;
  const expandedMicrovolt = (symmetric.high - symmetric.low) / 2;
  return found({
    trials: drawn.value.trials,
    seed,
    stream,
    isSettled: drawn.value.isSettled,
    probability,
    estimateMicrovolt: drawn.value.estimate,
    standardUncertaintyMicrovolt: drawn.value.standardUncertainty,
    symmetricMicrovolt: symmetric,
    shortestMicrovolt: shortest,
    expandedMicrovolt,
    expandedCelsius: expandedMicrovolt / point.seebeckMicrovoltPerCelsius,
    gum: gum.value,
  });
}
