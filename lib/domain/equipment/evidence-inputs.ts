import type { z } from "zod";
import type { Calibration } from "../calibration/types";
import type { CalibrationEvidence } from "../evidence/schema";
import type { UncertaintyInput } from "../evidence/uncertainty-input";

/** A half-width of nought is written as a line that is absent, with its reason: never left out. */
export const rectangular = (
  halfWidth: number,
  unit: "celsius" | "microvolt" | "relative",
  source: string,
): UncertaintyInput =>
  halfWidth === 0 ? { kind: "zero", reason: source } : { kind: "rectangular", halfWidth, unit, source };

export const calibrationEvidenceOf = (calibration: Calibration): z.infer<typeof CalibrationEvidence> => ({
  certificate: calibration.certificate,
  issuer: calibration.issuer,
  ...(calibration.accreditation ? { accreditation: calibration.accreditation } : {}),
  performedOn: calibration.performedOn,
  dueOn: calibration.dueOn,
  ...(calibration.findings.note ? { note: calibration.findings.note } : {}),
});

export const certificateSource = (calibration: Calibration): string =>
  `certificate ${calibration.certificate}, ${calibration.issuer}`;
