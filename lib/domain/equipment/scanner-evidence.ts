import type { z } from "zod";
import type { Calibration } from "../calibration/types";
import type { ScannerEvidence } from "../evidence/schema";
import { calibrationEvidenceOf, certificateSource, rectangular } from "./evidence-inputs";
import type { Equipment } from "./types";

/** A scanner may stand without a certificate: its parasitic emf is then what the laboratory itself found. */
export const scannerEvidenceOf = (
  { tag, serial, particulars }: Equipment<"scanner">,
  calibration: Calibration<"scanner"> | null,
): z.infer<typeof ScannerEvidence> => ({
  id: tag,
  serial,
  calibration: calibration ? calibrationEvidenceOf(calibration) : null,
  parasitic: calibration
    ? rectangular(
        calibration.findings.parasiticHalfWidthMicrovolt,
        "microvolt",
        certificateSource(calibration),
      )
    : rectangular(particulars.parasiticHalfWidthMicrovolt, "microvolt", particulars.basis),
});
