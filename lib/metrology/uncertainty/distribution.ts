import { SQRT_3 } from "../number/constants";

/**
 * The distribution assigned to an input, centred on its estimate, in the input's unit. Half-widths, scales and
 * standard deviations are finite and not negative; 0 ≤ β ≤ 1 is the top's width over the base's.
 */
export type Distribution =
  | { readonly kind: "normal"; readonly standardDeviation: number }
  | { readonly kind: "rectangular"; readonly halfWidth: number }
  | { readonly kind: "triangular"; readonly halfWidth: number }
  | { readonly kind: "arcsine"; readonly halfWidth: number }
  | { readonly kind: "trapezoidal"; readonly halfWidth: number; readonly beta: number }
  | { readonly kind: "student"; readonly scale: number; readonly degreesOfFreedom: number }
  | { readonly kind: "none" };

const SQRT_6 = 2.449489742783178;

/**
 * Standard deviation of a distribution, in the unit of its input.
 *
 * Rectangular a/√3 (JCGM 100:2008, 4.3.7), triangular a/√6 (4.3.9), trapezoidal a·√((1 + β²)/6) (4.3.9),
 * arcsine (U-shaped) a/√2 (JCGM 101:2008, 6.4.6), normal σ (6.4.7), Student s·√(ν/(ν − 2)) (6.4.9); "none" 0.
 * The scale s of Student's t is what the GUM takes as u (s/√n of n readings): the Monte Carlo method sees the wider
 * spread that few readings leave, the GUM carries the same thing in ν.
 *
 * Range: see `Distribution`. Student with ν ≤ 2 has no standard deviation: infinity. NaN in gives NaN.
 */
export function standardDeviation(distribution: Distribution): number {
  switch (distribution.kind) {
    case "normal":
      return distribution.standardDeviation;
    case "rectangular":
      return distribution.halfWidth / SQRT_3;
    case "triangular":
      return distribution.halfWidth / SQRT_6;
    case "arcsine":
      return distribution.halfWidth / Math.sqrt(2);
    case "trapezoidal":
      return distribution.halfWidth * Math.sqrt((1 + distribution.beta * distribution.beta) / 6);
    case "student": {
      const { scale, degreesOfFreedom: nu } = distribution;
      return nu <= 2 ? Number.POSITIVE_INFINITY : scale * Math.sqrt(nu / (nu - 2));
    }
    case "none":
      return 0;
  }
}
