import type { Requirement } from "../equipment/requirement";
import type { Equipment } from "../equipment/types";
import type { Calibration, CalibrationPapers } from "./types";

/** All that the acceptance of one calibration is judged by. */
export type CertificateFacts = {
  readonly equipment: Pick<Equipment, "tag" | "kind" | "serial" | "particulars">;
  readonly requirement: Requirement;
  readonly calibration: Calibration &
    Pick<
      CalibrationPapers,
      "itemSerial" | "traceabilityStatement" | "justification" | "fromCelsius" | "toCelsius"
    >;
  /** How many steps behind it the certificate names. */
  readonly parents: number;
  /** Approved for this kind on the day it was performed. */
  readonly isIssuerApproved: boolean;
  /** The accepted calibration before it; null for a first one. */
  readonly earlier: Calibration | null;
};
