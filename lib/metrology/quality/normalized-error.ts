import { found, type Outcome, refused } from "../outcome";

/** One result of a comparison: value and uncertainty in one unit; the uncertainty expanded for E_n, standard for ζ. */
export type ComparedResult = { readonly value: number; readonly uncertainty: number };

/** |E_n| ≤ 1 is satisfactory (ISO 13528:2015, 9.7; number of the clause from memory). */
export const SATISFACTORY_EN = 1;

export type NormalizedError = { readonly score: number; readonly satisfactory: boolean };

/**
 * E_n = (x − X)/√(U_x² + U_X² − 2·r·U_x·U_X): how two results differ against the expanded uncertainty of their difference.
 *
 * Source: ISO/IEC 17043 (annex on statistics) and ISO 13528:2015, 9.7, with r = 0; clause numbers from memory. The term
 * in r is the law of propagation for a difference of correlated quantities (JCGM 100:2008, 5.2.2): two results resting
 * on one reference differ less than their U say, and the plain denominator would hide a fault.
 *
 * `laboratory`, `reference`: value and U of the same coverage factor, any one unit. `correlation` r: −1 to 1, no unit.
 * The score has no unit. Problems: `not-finite`; `outside-range` for a negative U or r beyond ±1; `no-solution` where
 * the difference has no uncertainty at all.
 */
export function normalizedError(
  laboratory: ComparedResult,
  reference: ComparedResult,
  correlation = 0,
): Outcome<NormalizedError> {
  const score = scaledDifference(laboratory, reference, correlation);
  if (!score.ok) return score;
  return found({ score: score.value, satisfactory: Math.abs(score.value) <= SATISFACTORY_EN });
}

/**
 * (a − b)/√(u_a² + u_b² − 2·r·u_a·u_b), shared by E_n and ζ; units and problems as `normalizedError` says.
 * Source: JCGM 100:2008, equation (13) for y = a − b.
 */
export function scaledDifference(a: ComparedResult, b: ComparedResult, correlation: number): Outcome<number> {
  const numbers = [a.value, a.uncertainty, b.value, b.uncertainty, correlation];
  if (!numbers.every(Number.isFinite)) return refused("not-finite", "a number of the comparison is missing");
  if (a.uncertainty < 0 || b.uncertainty < 0) return refused("outside-range", "an uncertainty is negative");
  if (Math.abs(correlation) > 1) return refused("outside-range", "a correlation lies between −1 and 1");
  // (u_a − u_b)² + 2(1 − r)·u_a·u_b is the same, but rounding cannot make it negative.
  const apart = a.uncertainty - b.uncertainty;
  const variance = apart * apart + 2 * (1 - correlation) * a.uncertainty * b.uncertainty;
  if (!(variance > 0)) return refused("no-solution", "the difference has no uncertainty to compare it with");
  return found((a.value - b.value) / Math.sqrt(variance));
}
