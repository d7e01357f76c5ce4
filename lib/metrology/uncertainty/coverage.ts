import { SQRT_3 } from "../number/constants";
import { found, type Outcome } from "../outcome";
import type { CombinableEffect, Combined } from "./combine";
import type { Correlation } from "./correlation-factor";
import { coverageFactor, TWO_SIGMA_PROBABILITY } from "./coverage-factor";

/** How k was found. `factor` is k, `probability` what U = k·u_c is meant to cover. */
export type Coverage =
  | {
      readonly kind: "student";
      readonly factor: number;
      readonly probability: number;
      /** ν_eff, not cut; null = infinitely many. */
      readonly degreesOfFreedom: number | null;
    }
  | {
      readonly kind: "one-dominant-rectangle";
      readonly factor: number;
      readonly probability: number;
      /** u of all the rest over u of the rectangle: at most `limit`. */
      readonly ratio: number;
      readonly limit: number;
      /** Place of the rectangle in the list of effects. */
      readonly dominant: number;
    }
  | {
      readonly kind: "two-dominant-rectangles";
      readonly factor: number;
      readonly probability: number;
      /** u of all the rest over u of the two together: at most `limit`. */
      readonly ratio: number;
      readonly limit: number;
      /** |a₁ − a₂|/(a₁ + a₂): top over base of their trapezoid. */
      readonly beta: number;
      readonly dominant: readonly [number, number];
    }
  | {
      readonly kind: "monte-carlo";
      readonly factor: number;
      readonly probability: number;
      readonly trials: number;
      readonly seed: number;
    };

/** "student" takes t for every budget; "dominant" looks for one or two rectangles first. */
export type CoveragePolicy =
  | { readonly kind: "student" }
  | { readonly kind: "dominant"; readonly limit: number; readonly probability: number };

/** What the policy looks at: the effect with its distribution by name. */
export type CoverageEffect = CombinableEffect & { readonly distribution: string };

export const studentPolicy: CoveragePolicy = { kind: "student" };

/**
 * EA-4/02 S9's way; the numbers 0.3 and 95 % from memory, the document was not at hand. The simple k costs coverage as the
 * rest grows (own computation, normal rest): 94.8 % at a ratio of 0.1, 93.7 % at 0.2, 92.7 % at 0.3. Where that is too
 * little, k by Monte Carlo has none of it.
 */
export const dominantPolicy: CoveragePolicy = { kind: "dominant", limit: 0.3, probability: 0.95 };

/**
 * k for a combined budget, with its method and the numbers of the criterion.
 *
 * Policy "dominant": one rectangle with √(u_c² − u₁²)/u₁ ≤ limit makes the result rectangular, k = p·√3 (EA-4/02, S9, p = 0.95: 1.65);
 * two with √(u_c² − u₁² − u₂²)/√(u₁² + u₂²) ≤ limit make it a trapezoid, `trapezoidFactor` (EA-4/02, S10; clauses
 * from memory). A line that is correlated with another is no candidate, since the two together are no rectangle. All
 * else, and policy "student": t at 95.45 % with ν_eff (`coverageFactor`), whose refusals are handed on.
 *
 * Effects and u_c in one unit, k and ratios pure numbers, 0 < probability < 1.
 */
export function chooseCoverage(
  effects: readonly CoverageEffect[],
  correlations: readonly Correlation[],
  combined: Combined,
  policy: CoveragePolicy = studentPolicy,
): Outcome<Coverage> {
  const rectangular =
    policy.kind === "dominant" ? byRectangles(effects, correlations, combined, policy) : null;
  if (rectangular) return found(rectangular);
  const { degreesOfFreedom } = combined;
  const factor = coverageFactor(degreesOfFreedom);
  if (!factor.ok) return factor;
  return found({
    kind: "student",
    factor: factor.value,
    probability: TWO_SIGMA_PROBABILITY,
    degreesOfFreedom,
  });
}

type Dominant = Extract<CoveragePolicy, { kind: "dominant" }>;

function byRectangles(
  effects: readonly CoverageEffect[],
  correlations: readonly Correlation[],
  { standardUncertainty }: Combined,
  { limit, probability }: Dominant,
): Coverage | null {
  const isFree = (place: number): boolean =>
    correlations.every(
      ({ first, second, coefficient }) => coefficient === 0 || (first !== place && second !== place),
    );
  const [largest, second] = effects
    .map(({ effect, distribution }, place) => ({ place, distribution, size: Math.abs(effect) }))
    .filter(({ distribution, place, size }) => distribution === "rectangular" && size > 0 && isFree(place))
    .sort((a, b) => b.size - a.size);
  if (!largest) return null;
  // From the whole variance, so that a covariance among the others counts as theirs.
  const others = standardUncertainty * standardUncertainty - largest.size * largest.size;
  const ratio = Math.sqrt(Math.max(0, others)) / largest.size;
  const stated = { probability, limit };
  if (ratio <= limit) {
    const factor = probability * SQRT_3;
    return { kind: "one-dominant-rectangle", factor, ...stated, ratio, dominant: largest.place };
  }
  if (!second) return null;
  const both = Math.sqrt(largest.size * largest.size + second.size * second.size);
  const ratioOfTwo = Math.sqrt(Math.max(0, others - second.size * second.size)) / both;
  if (!(ratioOfTwo <= limit)) return null;
  const beta = (largest.size - second.size) / (largest.size + second.size);
  return {
    kind: "two-dominant-rectangles",
    factor: trapezoidFactor(beta, probability),
    ...stated,
    ratio: ratioOfTwo,
    beta,
    dominant: [largest.place, second.place],
  };
}

/**
 * k of a symmetric trapezoid: [1 − √((1 − p)(1 − β²))]/√((1 + β²)/6) (EA-4/02, S10, from memory; derived from the
 * trapezoid's distribution function, JCGM 101:2008, 6.4.4). β from 0 (triangle) to 1 (rectangle), 0 < p < 1, no unit.
 * That formula holds while the interval ends on a slope, β ≤ p/(2 − p); on the top, k = p·(1 + β)/2/√((1 + β²)/6).
 * NaN in gives NaN.
 */
export function trapezoidFactor(beta: number, probability: number): number {
  const deviation = Math.sqrt((1 + beta * beta) / 6);
  if (beta > probability / (2 - probability)) return (probability * (1 + beta)) / 2 / deviation;
  return (1 - Math.sqrt((1 - probability) * (1 - beta * beta))) / deviation;
}
