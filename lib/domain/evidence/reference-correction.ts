import { interpolate } from "@/lib/metrology/comparison/interpolate";
import { polynomial, polynomialSlope } from "@/lib/metrology/number/polynomial";
import { emf } from "@/lib/metrology/thermocouple/emf";
import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { AddedEmf } from "@/lib/metrology/thermocouple/temperature";
import type { ReferenceCorrection } from "./schema";

export type CertifiedRange = { readonly fromCelsius: number; readonly toCelsius: number };

/** Where a certificate speaks: between its points or as stated; a single point as far as its reach. */
export function certifiedRange(correction: ReferenceCorrection): CertifiedRange {
  if (correction.kind !== "points") return correction;
  const first = correction.points[0]?.celsius ?? Number.NaN;
  const last = correction.points.at(-1)?.celsius ?? Number.NaN;
  const reach = correction.points.length === 1 ? (correction.singlePointReachCelsius ?? 0) : 0;
  return { fromCelsius: first - reach, toCelsius: last + reach };
}

/**
 * The deviation from the reference function that a certificate gives, µV, as a function of temperature. Held
 * constant beyond the certified range, so that a solver may look there; whether that means anything is for
 * `certifiedRange` to say.
 */
export function deviationOf(correction: ReferenceCorrection, reference: ReferenceFunction): AddedEmf {
  if (correction.kind === "points") {
    const nodes = correction.points.map(({ celsius: x, deviationMicrovolt: y }) => ({ x, y }));
    return (celsius) => interpolate(nodes, celsius);
  }
  const { coefficientsMicrovolt, fromCelsius, toCelsius } = correction;
  const isWhole = correction.kind === "coefficients";
  return (celsius) => {
    const at = Math.min(toCelsius, Math.max(fromCelsius, celsius));
    const table = isWhole ? emf(reference, at) : null;
    const slope = isWhole ? seebeck(reference, at) : null;
    const value = polynomial(coefficientsMicrovolt, at) - (table?.ok ? table.value : 0);
    return {
      value,
      slope: at === celsius ? polynomialSlope(coefficientsMicrovolt, at) - (slope?.ok ? slope.value : 0) : 0,
    };
  };
}
