import { exponential } from "../number/exponential";
import { logarithm } from "../number/logarithm";

/** A·e^(−x/τ): amplitude in °C at x = 0, τ in seconds. */
export type ExponentialTerm = { readonly celsius: number; readonly tauSeconds: number };

/**
 * Slope × length of the straight line fitted to e^(−x/τ) over a window of length L, for a window **ending** at x = 0.
 * Multiply by A·e^(−x/τ) for one that ends at x. No unit; `length` and `tau` in one unit, both above 0.
 *
 * Source: least squares over a continuum, slope·L = (12/L²)·∫u·e^(−u/τ)du over −L/2 … L/2, which gives with z = L/(2τ)
 * −6·e^z·(cosh z − sinh z/z)/z. Below z = 0.02 the difference of the two cancels; there its series z²/3·(1 + z²/10) stands in.
 * No error cases; above z = 700 infinite, as the term itself then was at the window's beginning.
 */
export function driftOfExponential(length: number, tau: number): number {
  const z = length / (2 * tau);
  const grown = exponential(z);
  if (z < 0.02) return -6 * grown * (z / 3) * (1 + (z * z) / 10);
  const shrunk = 1 / grown;
  return ((-3 * grown) / z) * (grown + shrunk - (grown - shrunk) / z);
}

/**
 * Largest minus smallest value of a sum of two exponential terms in the window from `fromX` to `toX` (seconds), °C.
 *
 * Such a sum turns at most once: where A/τ_A·e^(−x/τ_A) = −B/τ_B·e^(−x/τ_B). Source: elementary calculus. The two τ must
 * differ; no error cases.
 */
export function rangeOfExponentials(
  a: ExponentialTerm,
  b: ExponentialTerm,
  fromX: number,
  toX: number,
): number {
  const at = (x: number): number =>
    a.celsius * exponential(-x / a.tauSeconds) + b.celsius * exponential(-x / b.tauSeconds);
  const first = at(fromX);
  const last = at(toX);
  // NaN where both have one sign, and then no comparison holds.
  const turn =
    logarithm(-(a.celsius * b.tauSeconds) / (b.celsius * a.tauSeconds)) /
    (1 / a.tauSeconds - 1 / b.tauSeconds);
  if (!(turn > fromX && turn < toX)) return Math.abs(last - first);
  const middle = at(turn);
  return Math.max(first, last, middle) - Math.min(first, last, middle);
}
