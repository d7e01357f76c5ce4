import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";
import { type CombinableEffect, type Combined, welchSatterthwaite } from "./combine";
import { type Correlation, correlationFactor } from "./correlation-factor";

/** `shares`: each input's part of u_c², in the order of the effects; they add up to 1, and may be negative. */
export type CorrelatedCombination = Combined & { readonly shares: readonly number[] };

/**
 * u_c² = Σ(cᵢ·uᵢ)² + 2·ΣΣ r(xᵢ, xⱼ)·cᵢ·uᵢ·cⱼ·uⱼ (JCGM 100:2008, 5.2.2, eq. 13 and 16) with ν_eff, and what each input
 * brings: its own square and half of each of its covariances. Effects signed, in the unit of the result. Without
 * correlations it is `combine`, bit for bit.
 *
 * ν_eff: Welch–Satterthwaite (G.4.1) holds for independent inputs only. Inputs that hang together through any chain of
 * coefficients other than 0 are therefore one part, with the variance they have together and the smallest ν of any of
 * them. That choice is this project's, on the safe side; no document at hand gives one.
 *
 * Refuses: what `correlationFactor` refuses ("outside-range"), an effect that is not finite ("not-finite") and ν that
 * is not above 0 ("outside-range"). All effects zero: u_c = 0, and shares of 0.
 */
export function combineCorrelated(
  effects: readonly CombinableEffect[],
  correlations: readonly Correlation[],
): Outcome<CorrelatedCombination> {
  for (const [place, { effect, degreesOfFreedom }] of effects.entries()) {
    if (!Number.isFinite(effect)) return refused("not-finite", `The effect of input ${place} is ${effect}.`);
    if (degreesOfFreedom !== null && !(degreesOfFreedom > 0)) {
      return refused("outside-range", `Input ${place} has ${degreesOfFreedom} degrees of freedom.`);
    }
  }
  const factor = correlationFactor(effects.length, correlations);
  if (!factor.ok) return factor;
  const terms = effects.map(({ effect }) => [effect * effect]);
  const group = effects.map((_, place) => place);
  for (const { first, second, coefficient } of correlations) {
    if (coefficient === 0) continue;
    const covariance =
      coefficient *
      (effects[first] as CombinableEffect).effect *
      (effects[second] as CombinableEffect).effect;
    (terms[first] as number[]).push(covariance);
    (terms[second] as number[]).push(covariance);
    const [kept, merged] = [group[first], group[second]];
    group.forEach((of, place) => {
      if (of === merged) group[place] = kept as number;
    });
  }
  // A variance of 0 that rounding leaves below it is 0: the matrix has been found semidefinite.
  const variance = Math.max(0, sum(terms.flat()));
  const together = new Map<number, number[]>();
  for (const [place, of] of group.entries()) together.set(of, [...(together.get(of) ?? []), place]);
  const parts = [...together.values()].map((members) => {
    return {
      variance: Math.max(0, sum(members.flatMap((place) => terms[place] as number[]))),
      degreesOfFreedom: fewest(members.map((place) => effects[place] as CombinableEffect)),
    };
  });
  return found({
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: welchSatterthwaite(variance, parts),
    shares: terms.map((own) => (variance > 0 ? sum(own) / variance : 0)),
  });
}

/** The least of the finite ν among those that act; null when there is none. */
function fewest(effects: readonly CombinableEffect[]): number | null {
  return effects.reduce<number | null>((least, { effect, degreesOfFreedom: nu }) => {
    if (effect === 0 || nu === null) return least;
    return least === null ? nu : Math.min(least, nu);
  }, null);
}
