import type { Outcome } from "@/lib/metrology/outcome";
import { type CorrectionCurve, correctionCurve } from "@/lib/metrology/standard/correction-curve";
import type { StandardCorrection } from "@/lib/metrology/standard/standard-correction";
import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import type { AddedEmf } from "@/lib/metrology/thermocouple/temperature";
import type { Reference } from "./bench";
import type { ReferenceCorrection } from "./schema";

type Stated = Pick<Reference, "correction" | "interpolation">;

export type CertifiedRange = { readonly fromCelsius: number; readonly toCelsius: number };

/** Where a certificate speaks: between its points or as stated; a single point as far as its reach. */
export function certifiedRange(correction: ReferenceCorrection): CertifiedRange {
  if (!("points" in correction)) return correction;
  const first = correction.points[0]?.celsius ?? Number.NaN;
  const last = correction.points.at(-1)?.celsius ?? Number.NaN;
  const reach = correction.points.length === 1 ? (correction.singlePointReachCelsius ?? 0) : 0;
  return { fromCelsius: first - reach, toCelsius: last + reach };
}

/** What a reference's certificate states, ready for use with the reference function of its type. */
export function curveOf(item: Stated, reference: ReferenceFunction): Outcome<CorrectionCurve> {
  return correctionCurve(asStandard(item), reference);
}

/**
 * The deviation from the reference function that a certificate gives, µV, with its slope; held constant beyond the
 * certified range, and no number where the certificate cannot be used.
 */
export function deviationOf(correction: ReferenceCorrection, reference: ReferenceFunction): AddedEmf {
  const curve = curveOf({ correction, interpolation: { kind: "zero", reason: "not asked" } }, reference);
  return curve.ok ? curve.value.added : () => ({ value: Number.NaN, slope: Number.NaN });
}

/** A stated interpolation has its own line in the budget; of the curve only the bound by differences is asked. */
function asStandard({ correction, interpolation }: Stated): StandardCorrection {
  const nothing = { kind: "zero" } as const;
  switch (correction.kind) {
    case "points":
    case "error-points":
      return {
        kind: "points",
        quantity: correction.kind === "points" ? "emf" : "temperature",
        points: correction.points.map((point) => ({
          celsius: point.celsius,
          value: "errorCelsius" in point ? point.errorCelsius : point.deviationMicrovolt,
        })),
        between: correction.between ?? "linear",
        singlePointReachCelsius: correction.singlePointReachCelsius ?? 0,
        interpolation:
          interpolation.kind === "second-differences"
            ? { kind: "second-differences" }
            : { kind: "stated", uncertainty: nothing },
      };
    case "polynomial":
    case "error-polynomial":
      return {
        kind: "polynomial",
        quantity: correction.kind === "polynomial" ? "emf" : "temperature",
        coefficients:
          correction.kind === "polynomial"
            ? correction.coefficientsMicrovolt
            : correction.coefficientsCelsius,
        fromCelsius: correction.fromCelsius,
        toCelsius: correction.toCelsius,
        interpolation: nothing,
      };
    case "coefficients":
      return {
        kind: "coefficients",
        pieces: [
          {
            fromCelsius: correction.fromCelsius,
            toCelsius: correction.toCelsius,
            microvolt: correction.coefficientsMicrovolt,
          },
        ],
        interpolation: nothing,
      };
  }
}
