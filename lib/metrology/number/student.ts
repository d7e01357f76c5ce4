import { arctangent } from "./arctangent";
import { PI } from "./constants";
import { normalQuantile } from "./normal";

/** Above this the asymptotic expansion is better than 1e-12, and summing ν/2 terms is no longer worth it. */
const FINITE_SUM_LIMIT = 1000;

/**
 * Probability of |T| ≤ t for Student's T with a whole number ν of degrees of freedom.
 * Finite sums in θ = arctan(t/√ν): Abramowitz & Stegun 26.7.3 (odd ν) and 26.7.4 (even ν). t ≥ 0 and ν ≥ 1, pure numbers;
 * the sum has ν/2 terms. The caller keeps other ν away; NaN in t gives NaN.
 */
export function studentProbability(t: number, degreesOfFreedom: number): number {
  const nu = degreesOfFreedom;
  const root = Math.sqrt(nu + t * t);
  const sine = t / root;
  const cosineSquare = nu / (nu + t * t);
  if (nu % 2 === 0) {
    let term = 1;
    let sum = 1;
    for (let i = 2; i < nu; i += 2) {
      term *= ((i - 1) / i) * cosineSquare;
      sum += term;
    }
    return sine * sum;
  }
  const theta = arctangent(t / Math.sqrt(nu));
  let term = Math.sqrt(nu) / root;
  let sum = nu > 1 ? term : 0;
  for (let i = 3; i < nu; i += 2) {
    term *= ((i - 1) / i) * cosineSquare;
    sum += term;
  }
  return (2 / PI) * (theta + sine * sum);
}

/** Abramowitz & Stegun 26.7.5: Student's quantile from the normal one, for large ν. */
function expandedQuantile(x: number, nu: number): number {
  const s = x * x;
  const g1 = (x * (s + 1)) / 4;
  const g2 = (x * ((5 * s + 16) * s + 3)) / 96;
  const g3 = (x * (((3 * s + 19) * s + 17) * s - 15)) / 384;
  const g4 = (x * ((((79 * s + 776) * s + 1482) * s - 1920) * s - 945)) / 92160;
  return x + (g1 + (g2 + (g3 + g4 / nu) / nu) / nu) / nu;
}

/**
 * t with P(|T| ≤ t) = p, two-sided, for a whole ν ≥ 1 and 0 < p < 1; NaN otherwise (callers check ν first). The inverse of
 * `studentProbability` by halving, above ν = 1000 Abramowitz & Stegun 26.7.5; t, p and ν are pure numbers (JCGM 100:2008, G.3).
 * `normal` is the same quantile for infinite ν, when the caller knows it exactly.
 */
export function studentQuantile(
  p: number,
  degreesOfFreedom: number,
  normal = normalQuantile((1 + p) / 2),
): number {
  const nu = degreesOfFreedom;
  if (!(nu >= 1 && Math.floor(nu) === nu && p > 0 && p < 1)) return Number.NaN;
  if (nu > FINITE_SUM_LIMIT) return expandedQuantile(normal, nu);
  let low = 0;
  let high = 1;
  while (studentProbability(high, nu) < p) high *= 2;
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    if (studentProbability(middle, nu) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
