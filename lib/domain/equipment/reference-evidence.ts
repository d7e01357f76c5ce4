import type { z } from "zod";
import { referenceCorrectionOf } from "../calibration/reference-correction-of";
import type { Calibration } from "../calibration/types";
import type { ReferenceEvidence } from "../evidence/schema";
import { inhomogeneityInput, type MeasuredInhomogeneity } from "../furnace/inhomogeneity-test";
import { calibrationEvidenceOf, certificateSource, rectangular } from "./evidence-inputs";
import type { Equipment } from "./types";

/** The evidence's `id` is the equipment's tag: what stands on the thing itself and what people say. */
export const referenceEvidenceOf = (
  { tag, serial, particulars }: Equipment<"reference">,
  calibration: Calibration<"reference">,
  /** An accepted test replaces what is taken for granted of its wires. */
  inhomogeneity?: MeasuredInhomogeneity,
): z.infer<typeof ReferenceEvidence> => ({
  id: tag,
  serial,
  type: particulars.type,
  protection: particulars.protection,
  calibration: calibrationEvidenceOf(calibration),
  correction: referenceCorrectionOf(calibration.findings),
  calibrationUncertainty: {
    kind: "expanded",
    expanded: calibration.findings.expanded,
    coverageFactor: calibration.findings.coverageFactor,
    unit: calibration.findings.unit,
    ...(calibration.findings.degreesOfFreedom === undefined
      ? {}
      : { degreesOfFreedom: calibration.findings.degreesOfFreedom }),
    source: certificateSource(calibration),
  },
  interpolation:
    particulars.interpolationHalfWidthCelsius === undefined
      ? { kind: "zero", reason: "not recorded for this reference: taken to be within its certificate's U" }
      : rectangular(particulars.interpolationHalfWidthCelsius, "celsius", particulars.basis),
  drift: rectangular(particulars.driftHalfWidthCelsius, "celsius", particulars.basis),
  inhomogeneity: inhomogeneity
    ? inhomogeneityInput(inhomogeneity)
    : rectangular(particulars.inhomogeneityRelativeHalfWidth, "relative", particulars.basis),
});
