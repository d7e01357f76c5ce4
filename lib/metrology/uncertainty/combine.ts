import { sum } from "../number/sum";

/** One uncorrelated input: effect = sensitivity × standard uncertainty, signed; null = infinitely many ν. */
export type CombinableEffect = { readonly effect: number; readonly degreesOfFreedom: number | null };

export type Combined = { readonly standardUncertainty: number; readonly degreesOfFreedom: number | null };

/**
 * u_c = √Σ(cᵢ·uᵢ)² (JCGM 100:2008, eq. 11a) and ν_eff = u_c⁴ / Σ((cᵢ·uᵢ)⁴/νᵢ) (Welch–Satterthwaite,
 * eq. G.2b), for uncorrelated inputs. A quantity that is itself a combination enters ν_eff by its own
 * inputs, in the unit of the result: list those here, not their sum.
 */
export function combine(effects: readonly CombinableEffect[]): Combined {
  const squares = effects.map(({ effect }) => effect * effect);
  const variance = sum(squares);
  const denominator = sum(
    effects.map(({ degreesOfFreedom }, i) => {
      const square = squares[i] ?? 0;
      return degreesOfFreedom === null ? 0 : (square * square) / degreesOfFreedom;
    }),
  );
  return {
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: denominator > 0 ? (variance * variance) / denominator : null,
  };
}
