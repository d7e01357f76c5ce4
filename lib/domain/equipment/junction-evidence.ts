import type { z } from "zod";
import type { Calibration } from "../calibration/types";
import type { JunctionEvidence } from "../evidence/schema";
import { calibrationEvidenceOf, certificateSource, rectangular } from "./evidence-inputs";
import type { Equipment } from "./types";

/** `celsius`: the temperature written down for this run; without it the certificate's, then the equipment's own. */
export const junctionEvidenceOf = (
  { tag, serial, particulars }: Equipment<"junction">,
  calibration: Calibration<"junction"> | null,
  celsius?: number,
): z.infer<typeof JunctionEvidence> => ({
  id: tag,
  serial,
  celsius: celsius ?? calibration?.findings.celsius ?? particulars.celsius,
  calibration: calibration ? calibrationEvidenceOf(calibration) : null,
  uncertainty: calibration
    ? {
        kind: "expanded",
        expanded: calibration.findings.expandedCelsius,
        coverageFactor: calibration.findings.coverageFactor,
        unit: "celsius",
        source: certificateSource(calibration),
      }
    : rectangular(particulars.halfWidthCelsius, "celsius", particulars.basis),
  spread:
    particulars.spreadHalfWidthCelsius === undefined
      ? { kind: "zero", reason: "one junction, not a block: it has no spread over channels" }
      : rectangular(particulars.spreadHalfWidthCelsius, "celsius", particulars.basis),
  ...(particulars.block ? { block: particulars.block } : {}),
});
