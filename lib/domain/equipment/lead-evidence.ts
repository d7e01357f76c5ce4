import type { z } from "zod";
import type { Calibration } from "../calibration/types";
import type { SensorEvidence } from "../evidence/schema";
import { certificateSource, rectangular } from "./evidence-inputs";
import type { Equipment } from "./types";

export type LeadInEvidence = Pick<z.infer<typeof SensorEvidence>, "lead"> & {
  readonly cable: NonNullable<z.infer<typeof SensorEvidence>["cable"]>;
};

/** A lot of lead of ours between sensor and junction: its correction is added to the emf, what it is known by stands in the budget. */
export const leadEvidenceOf = (
  { tag, particulars }: Equipment<"lead">,
  calibration: Calibration<"lead"> | null,
): LeadInEvidence => {
  const { lot, correctionMicrovolt, halfWidthMicrovolt, fromCelsius, toCelsius, basis } = particulars;
  const cable = { lot: `${tag}, lot ${lot}`.slice(0, 80) };
  if (calibration)
    return {
      cable: { ...cable, correctionMicrovolt: calibration.findings.correctionMicrovolt },
      lead: {
        kind: "expanded",
        expanded: calibration.findings.expandedMicrovolt,
        coverageFactor: calibration.findings.coverageFactor,
        unit: "microvolt",
        source: certificateSource(calibration),
      },
    };
  return {
    cable: { ...cable, correctionMicrovolt },
    lead: rectangular(
      halfWidthMicrovolt,
      "microvolt",
      `${basis}; ends from ${fromCelsius} to ${toCelsius} °C`,
    ),
  };
};
