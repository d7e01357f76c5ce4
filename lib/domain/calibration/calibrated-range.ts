import { type CertifiedRange, certifiedRange } from "../evidence/reference-correction";
import type { Findings } from "./findings";
import { referenceCorrectionOf } from "./reference-correction-of";

/** Where a certificate gives a deviation; null where it is not one of temperature. */
export const rangeOfFindings = (findings: Findings): CertifiedRange | null => {
  if (findings.kind === "thermometer")
    return { fromCelsius: findings.fromCelsius, toCelsius: findings.toCelsius };
  if (findings.kind !== "reference") return null;
  const { fromCelsius, toCelsius } = certifiedRange(referenceCorrectionOf(findings));
  return { fromCelsius, toCelsius };
};

/** Where it may be used: what the findings give, narrowed by what the certificate states. */
export const calibratedRange = (
  findings: Findings,
  stated: { readonly fromCelsius: number | null; readonly toCelsius: number | null },
): CertifiedRange | null => {
  const found = rangeOfFindings(findings);
  return (
    found && {
      fromCelsius: Math.max(found.fromCelsius, stated.fromCelsius ?? found.fromCelsius),
      toCelsius: Math.min(found.toCelsius, stated.toCelsius ?? found.toCelsius),
    }
  );
};
