import { SQRT_3 } from "../number/constants";

/** How an uncertainty is stated where it comes from. Values not negative, coverage factor above 0. */
export type StatedUncertainty =
  | { readonly kind: "rectangular"; readonly halfWidth: number }
  | { readonly kind: "expanded"; readonly expanded: number; readonly coverageFactor: number }
  | { readonly kind: "standard"; readonly standard: number }
  | { readonly kind: "zero" };

/** Standard uncertainty of one input: half-width/√3 (JCGM 100:2008, 4.3.7), U/k (4.3.3), or as stated. */
export function standardUncertainty(stated: StatedUncertainty): number {
  switch (stated.kind) {
    case "rectangular":
      return stated.halfWidth / SQRT_3;
    case "expanded":
      return stated.expanded / stated.coverageFactor;
    case "standard":
      return stated.standard;
    case "zero":
      return 0;
  }
}
