import { SQRT_3 } from "../number/constants";
import { standardDeviation } from "./distribution";

/** How an uncertainty is stated where it comes from. Values not negative, coverage factor above 0. */
export type StatedUncertainty =
  | { readonly kind: "rectangular"; readonly halfWidth: number }
  | { readonly kind: "triangular"; readonly halfWidth: number }
  | { readonly kind: "arcsine"; readonly halfWidth: number }
  | { readonly kind: "trapezoidal"; readonly halfWidth: number; readonly beta: number }
  | { readonly kind: "expanded"; readonly expanded: number; readonly coverageFactor: number }
  | { readonly kind: "standard"; readonly standard: number }
  | { readonly kind: "zero" };

/**
 * Standard uncertainty of one input, in the unit in which it is stated: half-width/√3 (JCGM 100:2008, 4.3.7), the
 * other limits as `standardDeviation` has them, U/k (4.3.3), or as stated; zero for "zero".
 * Range: see `StatedUncertainty`. No error cases of its own: NaN in gives NaN, a coverage factor of 0 infinity.
 */
export function standardUncertainty(stated: StatedUncertainty): number {
  switch (stated.kind) {
    case "rectangular":
      return stated.halfWidth / SQRT_3;
    case "triangular":
    case "arcsine":
    case "trapezoidal":
      return standardDeviation(stated);
    case "expanded":
      return stated.expanded / stated.coverageFactor;
    case "standard":
      return stated.standard;
    case "zero":
      return 0;
  }
}
