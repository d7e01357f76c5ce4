import { type CombinableEffect, type Combined, combine } from "@/lib/metrology/uncertainty/combine";

export function combineEffects(
  effects: readonly CombinableEffect[],
  correlations: readonly { readonly first: number; readonly second: number; readonly coefficient: number }[],
): Combined {
  const alone = combine(effects);
  const covariance = correlations.reduce(
    (sum, { first, second, coefficient }) =>
      sum + 2 * coefficient * (effects[first]?.effect ?? 0) * (effects[second]?.effect ?? 0),
    0,
  );
  if (covariance === 0) return alone;
  const before = alone.standardUncertainty * alone.standardUncertainty;
  const variance = Math.max(0, before + covariance);
  const scale = variance / before;
  return {
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: alone.degreesOfFreedom === null ? null : alone.degreesOfFreedom * scale * scale,
  };
}
