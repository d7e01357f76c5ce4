import { SQRT_2 } from "./constants";
import { complementaryErrorFunction } from "./error-function";

/**
 * Φ(z), the distribution function of the standard normal: ½·erfc(−z/√2) (Abramowitz & Stegun 26.2.29 with 7.1.2; numbers from
 * memory). z and Φ are pure numbers; every z, Φ(±∞) = 0 and 1, NaN gives NaN. Relative accuracy kept in the lower tail.
 */
export function normalProbability(z: number): number {
  return complementaryErrorFunction(-z / SQRT_2) / 2;
}

/**
 * z with Φ(z) = p, by the method of halving between −40 and 0 (the inverse of `normalProbability`, with its source; pure numbers). Solved in the lower tail,
 * where Φ keeps its relative accuracy; p near 1 is only as good as 1 − p. NaN unless 0 < p < 1.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) return Number.NaN;
  if (p > 0.5) return -normalQuantile(1 - p);
  let low = -40;
  let high = 0;
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    if (normalProbability(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
