import { SQRT_2 } from "./constants";
import { complementaryErrorFunction } from "./error-function";

/** Φ(z), the distribution function of the standard normal: ½·erfc(−z/√2). */
export function normalProbability(z: number): number {
  return complementaryErrorFunction(-z / SQRT_2) / 2;
}

/** z with Φ(z) = p, by halving: 0 < p < 1. Solved in the lower tail, where Φ keeps its relative accuracy. */
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
