import { studentQuantile } from "../number/student";
import { found, type Outcome, refused } from "../outcome";

/** erf(√2): the probability of ±2σ of the normal distribution, called 95.45 % (JCGM 100:2008, table G.2). */
export const TWO_SIGMA_PROBABILITY = 0.9544997361036416;

/** ν_eff = 9 comes out of floating point as 8.999 999 999 999: that is still 9. */
const WHOLE_NUMBER_SLACK = 1e-9;

/**
 * ν_eff cut to the next lower whole number (JCGM 100:2008, G.4.1, the first of its two ways). Pure numbers, ν ≥ 0; what lies
 * within 1e-9 of a whole number is that number. NaN gives NaN.
 */
export function truncatedDegreesOfFreedom(degreesOfFreedom: number): number {
  return Math.floor(degreesOfFreedom * (1 + WHOLE_NUMBER_SLACK));
}

/**
 * k = t_p(ν_eff) for p = 95.45 %, two-sided (JCGM 100:2008, G.3.2 and G.6.4); exactly 2 for infinite ν (null). Pure numbers.
 * Refuses ν below 1 and NaN ("too-few"): there is no Student's t to take, and no coverage factor.
 */
export function coverageFactor(degreesOfFreedom: number | null): Outcome<number> {
  if (degreesOfFreedom === null) return found(2);
  const whole = truncatedDegreesOfFreedom(degreesOfFreedom);
  if (!(whole >= 1)) {
    return refused("too-few", `${degreesOfFreedom} effective degrees of freedom: at least 1 is needed`);
  }
  return found(studentQuantile(TWO_SIGMA_PROBABILITY, whole, 2));
}
