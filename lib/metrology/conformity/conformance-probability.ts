import { normalProbability } from "../number/normal";

/**
 * p_c = Φ((T_U − y)/u) − Φ((T_L − y)/u): the probability that the true value lies within the tolerance,
 * for a normal state of knowledge (JCGM 106:2012, 7.4, eq. 8). Always both limits: with T/u below about
 * five the far tail matters too. An infinite limit makes it one-sided (7.3).
 */
export function conformanceProbability(
  value: number,
  standardUncertainty: number,
  lower: number,
  upper: number,
): number {
  if (standardUncertainty === 0) return value >= lower && value <= upper ? 1 : 0;
  const low = (lower - value) / standardUncertainty;
  const high = (upper - value) / standardUncertainty;
  // Both limits on one side of y: subtract in the lower tail, where Φ does not round to 1.
  if (low > 0) return normalProbability(-low) - normalProbability(-high);
  if (high < 0) return normalProbability(high) - normalProbability(low);
  return 1 - (normalProbability(low) + normalProbability(-high));
}
