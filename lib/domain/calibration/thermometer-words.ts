import type { FindingsOf } from "./findings";

/** What the certificate of a platinum thermometer gives, in a line. */
export const thermometerWords = ({ curve }: FindingsOf<"thermometer">): string =>
  curve.form === "sprt"
    ? `ITS-90 subrange ${curve.section}, R(0.01 °C) = ${curve.waterOhm} Ω, ${Object.entries(curve.ratios)
        .map(([point, ratio]) => `W(${point}) = ${ratio}`)
        .join(", ")}`
    : `R(0 °C) = ${curve.zeroOhm} Ω, A = ${curve.a} °C⁻¹, B = ${curve.b} °C⁻², C = ${curve.c} °C⁻⁴`;
