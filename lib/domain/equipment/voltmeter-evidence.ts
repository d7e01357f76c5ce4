import type { z } from "zod";
import type { Calibration } from "../calibration/types";
import type { VoltmeterEvidence } from "../evidence/schema";
import { calibrationEvidenceOf, certificateSource, rectangular } from "./evidence-inputs";
import type { Equipment } from "./types";

export const voltmeterEvidenceOf = (
  { tag, serial, particulars }: Equipment<"voltmeter">,
  calibration: Calibration<"voltmeter">,
): z.infer<typeof VoltmeterEvidence> => ({
  id: tag,
  serial,
  calibration: calibrationEvidenceOf(calibration),
  corrections: calibration.findings.corrections.map((point) => ({ ...point })),
  calibrationUncertainty: {
    kind: "expanded",
    expanded: calibration.findings.expandedMicrovolt,
    coverageFactor: calibration.findings.coverageFactor,
    unit: "microvolt",
    source: certificateSource(calibration),
  },
  drift: rectangular(particulars.driftHalfWidthMicrovolt, "microvolt", particulars.basis),
  // Half a step of the last digit each way.
  resolution: rectangular(
    particulars.resolutionMicrovolt / 2,
    "microvolt",
    `resolution ${particulars.resolutionMicrovolt} µV on the range used`,
  ),
});
