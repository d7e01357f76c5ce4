import type { StatedUncertainty } from "../uncertainty/standard-uncertainty";

/** What a certificate states at a temperature: E_ref − E_table in µV, or the error (indication − t) in °C. */
export type CorrectionQuantity = "emf" | "temperature";

/**
 * How well the correction is known between the certificate's points, apart from the points themselves: as stated, in the
 * unit of the quantity, or bounded by the second differences of the points.
 */
export type InterpolationRule =
  | { readonly kind: "stated"; readonly uncertainty: StatedUncertainty }
  | { readonly kind: "second-differences" };

export type CertificatePoint = { readonly celsius: number; readonly value: number };

/**
 * What a standard's certificate says of it, each form within its range only.
 * `polynomial`: the quantity as Σ aᵢ·tⁱ. `points`: the quantity at temperatures, ascending; a single point stands for
 * its neighbourhood. `coefficients`: the standard's own emf function in µV, piece by piece, ascending and joined.
 */
export type StandardCorrection =
  | {
      readonly kind: "polynomial";
      readonly quantity: CorrectionQuantity;
      readonly coefficients: readonly number[];
      readonly fromCelsius: number;
      readonly toCelsius: number;
      readonly interpolation: StatedUncertainty;
    }
  | {
      readonly kind: "points";
      readonly quantity: CorrectionQuantity;
      readonly points: readonly CertificatePoint[];
      readonly between: "linear" | "monotone-cubic";
      /** °C each side of a single point. */
      readonly singlePointReachCelsius: number;
      readonly interpolation: InterpolationRule;
    }
  | {
      readonly kind: "coefficients";
      readonly pieces: readonly OwnFunctionPiece[];
      /** Standard or other uncertainty in µV. */
      readonly interpolation: StatedUncertainty;
    };

/** E(t) = Σ aᵢ·tⁱ in µV, index = power. */
export type OwnFunctionPiece = {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly microvolt: readonly number[];
};
