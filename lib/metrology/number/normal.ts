import { SQRT_2, SQRT_PI } from "./constants";
import { complementaryErrorFunction } from "./error-function";
import { exponential } from "./exponential";
import { logarithm } from "./logarithm";

/**
 * Φ(z), the distribution function of the standard normal: ½·erfc(−z/√2) (Abramowitz & Stegun 26.2.29 with 7.1.2; numbers from
 * memory). z and Φ are pure numbers; every z, Φ(±∞) = 0 and 1, NaN gives NaN. Relative accuracy kept in the lower tail.
 */
export function normalProbability(z: number): number {
  return complementaryErrorFunction(-z / SQRT_2) / 2;
}

/** What the estimate is off by, at most, with room to spare: Φ itself is good for 4e-13 of z. */
const NEAR_ENOUGH = 1e-11;
const NEWTON_STEPS = 3;
/** Below, the density is no longer a normal float64, and Newton's steps lead nowhere. */
const SMALLEST_ESTIMATED = 1e-300;

/**
 * z with Φ(z) = p, by the method of halving between −40 and 0 (the inverse of `normalProbability`, with its source; pure numbers). Solved in the lower tail,
 * where Φ keeps its relative accuracy; p near 1 is only as good as 1 − p. NaN unless 0 < p < 1. Φ is asked only for halves
 * that the estimate cannot tell apart, which changes no bit of the result and spares three calls of four.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) return Number.NaN;
  if (p > 0.5) return -normalQuantile(1 - p);
  const estimate = estimateQuantile(p);
  let low = -40;
  let high = 0;
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) return middle;
    const apart = middle - estimate;
    const isBelow = apart > NEAR_ENOUGH || apart < -NEAR_ENOUGH ? apart < 0 : normalProbability(middle) < p;
    if (isBelow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * For p up to ½: the rational approximation of Abramowitz & Stegun 26.2.23 (|error| < 4.5e-4; coefficients from memory),
 * then Newton's steps. NaN, which tells no halves apart, where p is too small for them.
 */
function estimateQuantile(p: number): number {
  if (p < SMALLEST_ESTIMATED) return Number.NaN;
  const t = Math.sqrt(-2 * logarithm(p));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  let z = above / below - t;
  for (let step = 0; step < NEWTON_STEPS; step += 1)
    z += ((p - normalProbability(z)) * (SQRT_2 * SQRT_PI)) / exponential((-z * z) / 2);
  return z;
}
