import { sum } from "../number/sum";

/** One input: effect = sensitivity × standard uncertainty, signed, in the result's unit; null = infinitely many ν. */
export type CombinableEffect = { readonly effect: number; readonly degreesOfFreedom: number | null };

/** u_c in the unit of the effects, and ν_eff; null = infinitely many. */
export type Combined = { readonly standardUncertainty: number; readonly degreesOfFreedom: number | null };

/**
 * u_c = √Σ(cᵢ·uᵢ)² (JCGM 100:2008, eq. 11a) and ν_eff = u_c⁴ / Σ((cᵢ·uᵢ)⁴/νᵢ) (Welch–Satterthwaite,
 * eq. G.2b), for uncorrelated inputs; correlated ones go to `combineCorrelated`. Effects in one unit, that of u_c. A
 * quantity that is itself a combination enters ν_eff by its own inputs, in the unit of the result: list those here,
 * not their sum.
 *
 * Range: |effect| from 1e-75 to 1e75, so that no fourth power is lost; ν > 0. A zero effect brings no ν. NaN in any
 * effect or ν comes out as NaN, which `coverageFactor` refuses.
 */
export function combine(effects: readonly CombinableEffect[]): Combined {
  const parts = effects.map(({ effect, degreesOfFreedom }) => ({
    variance: effect * effect,
    degreesOfFreedom,
  }));
  const total = sum(parts.map(({ variance }) => variance));
  return { standardUncertainty: Math.sqrt(total), degreesOfFreedom: welchSatterthwaite(total, parts) };
}

/** What is independent of all the rest: its variance in the result, and ν; null = infinitely many. */
type IndependentPart = { readonly variance: number; readonly degreesOfFreedom: number | null };

/**
 * ν_eff = u_c⁴ / Σ(variance²/ν) (JCGM 100:2008, eq. G.2b) over independent parts; null when no part with a variance
 * has finite ν. Variances in the square of the result's unit, `total` their sum. NaN in gives NaN.
 */
export function welchSatterthwaite(total: number, parts: readonly IndependentPart[]): number | null {
  const denominator = sum(
    parts.map(({ variance, degreesOfFreedom }) =>
      degreesOfFreedom === null || variance === 0 ? 0 : (variance * variance) / degreesOfFreedom,
    ),
  );
  return denominator === 0 ? null : (total * total) / denominator;
}
