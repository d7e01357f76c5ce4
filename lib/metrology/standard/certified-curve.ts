import { interpolate, type TableNode } from "../comparison/interpolate";
import { monotoneCubic } from "../number/monotone-cubic";
import { polynomial, polynomialSlope } from "../number/polynomial";
import type { ValueAndSlope } from "../number/solve-increasing";
import { standardUncertainty } from "../uncertainty/standard-uncertainty";
import { secondDifferenceBound } from "./second-difference-bound";
import type { CertificatePoint, CorrectionQuantity, StandardCorrection } from "./standard-correction";

/** A certificate in its own quantity; `whole-emf`: the standard's own E(t) in µV, of which the table is still a part. */
export type CertifiedCurve = {
  readonly quantity: CorrectionQuantity | "whole-emf";
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly valueAt: (celsius: number) => ValueAndSlope;
  /** Standard uncertainty of the interpolation, in the unit of the quantity. */
  readonly interpolation: (celsius: number) => number;
};

/**
 * What a certificate states, as a function of t in °C within its range: polynomial by Horner's scheme, points by straight
 * lines or Steffen's monotone cubic, own coefficients piece by piece (at a join the lower holds). The form must have
 * passed `checkCorrection`; no error cases. Unit: that of the certificate's quantity.
 */
export function certifiedCurve(correction: StandardCorrection): CertifiedCurve {
  switch (correction.kind) {
    case "polynomial": {
      const { quantity, coefficients, fromCelsius, toCelsius } = correction;
      const stated = standardUncertainty(correction.interpolation);
      const valueAt = (t: number) => polynomialAt(coefficients, t);
      return { quantity, fromCelsius, toCelsius, valueAt, interpolation: () => stated };
    }
    case "coefficients": {
      const { pieces } = correction;
      const stated = standardUncertainty(correction.interpolation);
      let last = pieces[0] as (typeof pieces)[number];
      const { fromCelsius } = last;
      for (const piece of pieces) last = piece;
      const valueAt = (t: number) =>
        polynomialAt((pieces.find(({ toCelsius }) => t <= toCelsius) ?? last).microvolt, t);
      return {
        quantity: "whole-emf",
        fromCelsius,
        toCelsius: last.toCelsius,
        valueAt,
        interpolation: () => stated,
      };
    }
    case "points":
      return pointsCurve(correction);
  }
}

function polynomialAt(coefficients: readonly number[], t: number): ValueAndSlope {
  return { value: polynomial(coefficients, t), slope: polynomialSlope(coefficients, t) };
}

function pointsCurve(correction: Extract<StandardCorrection, { kind: "points" }>): CertifiedCurve {
  const { points, between, quantity, interpolation } = correction;
  const nodes: TableNode[] = points.map(({ celsius: x, value: y }) => ({ x, y }));
  const reach = points.length === 1 ? correction.singlePointReachCelsius : 0;
  const stated = interpolation.kind === "stated" ? standardUncertainty(interpolation.uncertainty) : null;
  return {
    quantity,
    fromCelsius: (points[0] as CertificatePoint).celsius - reach,
    toCelsius: (points.at(-1) as CertificatePoint).celsius + reach,
    valueAt: (t) => (between === "linear" ? interpolate(nodes, t) : monotoneCubic(nodes, t)),
    interpolation: (t) =>
      stated ?? standardUncertainty({ kind: "rectangular", halfWidth: secondDifferenceBound(nodes, t) }),
  };
}
