import { normalProbability } from "../number/normal";
import { studentProbability } from "../number/student";

/** Above this many degrees of freedom the sum of ν/2 terms gives way to A&S 26.7.8, good to 2e-7 there. */
const FINITE_SUM_LIMIT = 1000;

/** ν from a floating sum: 8.999 999 999 is 9. */
const WHOLE_NUMBER_SLACK = 1e-9;

/**
 * p_c: the probability that the true value lies within the tolerance, both limits always: with T/u below about five the
 * far tail matters too. Normal state of knowledge, Φ((T_U − y)/u) − Φ((T_L − y)/u) (JCGM 106:2012, 7.4, eq. 8); with
 * few degrees of freedom Student's t with ν instead of Φ (JCGM 101:2008, 6.4.9): the normal one is too sure there.
 * Symbols: `value` = y, `standardUncertainty` = u, `lower` = T_L, `upper` = T_U, one unit for all; an infinite limit makes
 * it one-sided (7.3). `degreesOfFreedom` = ν, null for infinitely many; cut to the next lower whole number.
 * Range: 0 to 1. NaN, never a guess: y or a limit not a number, u below 0, limits turned round, ν below 1.
 */
export function conformanceProbability(
  value: number,
  standardUncertainty: number,
  lower: number,
  upper: number,
  degreesOfFreedom: number | null = null,
): number {
  return probabilities(value, standardUncertainty, lower, upper, degreesOfFreedom).inside;
}

/**
 * 1 − p_c, the probability that the true value lies outside the tolerance, added up from the two tails, so that one in
 * 10⁹ keeps its digits where 1 − p_c would not (JCGM 106:2012, 7.4). Symbols, units, range and NaN as for
 * `conformanceProbability`.
 */
export function nonconformanceProbability(
  value: number,
  standardUncertainty: number,
  lower: number,
  upper: number,
  degreesOfFreedom: number | null = null,
): number {
  return probabilities(value, standardUncertainty, lower, upper, degreesOfFreedom).outside;
}

function probabilities(y: number, u: number, lower: number, upper: number, nu: number | null) {
  const isSound = Number.isFinite(y) && u >= 0 && lower <= upper && (nu === null || nu >= 1);
  if (!isSound) return { inside: Number.NaN, outside: Number.NaN };
  if (u === 0) {
    const isInside = y >= lower && y <= upper;
    return { inside: isInside ? 1 : 0, outside: isInside ? 0 : 1 };
  }
  const low = (lower - y) / u;
  const high = (upper - y) / u;
  const below = belowProbability(low, nu);
  const above = belowProbability(-high, nu);
  const outside = between0And1(below + above);
  // Both limits on one side of y: subtract in the tail, where the probability does not round to 1.
  if (low > 0) return { inside: between0And1(belowProbability(-low, nu) - above), outside };
  if (high < 0) return { inside: between0And1(belowProbability(high, nu) - below), outside };
  return { inside: 1 - outside, outside };
}

/** Student's tails are 1 less a sum that may end some 1e-16 beyond 1: no probability does. */
function between0And1(probability: number): number {
  return Math.min(1, Math.max(0, probability));
}

/** P(Z ≤ z), or P(T ≤ z) with ν degrees of freedom. */
function belowProbability(z: number, nu: number | null): number {
  if (nu === null || Math.abs(z) === Number.POSITIVE_INFINITY) return normalProbability(z);
  const whole = Math.floor(nu * (1 + WHOLE_NUMBER_SLACK));
  // Abramowitz & Stegun 26.7.8.
  if (whole > FINITE_SUM_LIMIT) {
    return normalProbability((z * (1 - 1 / (4 * whole))) / Math.sqrt(1 + (z * z) / (2 * whole)));
  }
  const tail = (1 - studentProbability(Math.abs(z), whole)) / 2;
  return z <= 0 ? tail : 1 - tail;
}
