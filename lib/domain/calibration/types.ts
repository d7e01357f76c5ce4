import type { Acceptance } from "./acceptance";
import type { Findings, FindingsOf } from "./findings";

/** Routes of traceability, ILAC-P10:07/2020. */
export const routes = ["nmi", "accredited", "in-house", "other"] as const;
export type Route = (typeof routes)[number];

type Recorded = {
  readonly id: string;
  readonly equipmentId: string;
  readonly certificate: string;
  readonly issuer: string;
  readonly accreditation: string;
  readonly route: Route;
  /** ISO dates, no time: a certificate states days. */
  readonly performedOn: string;
  readonly dueOn: string;
};

/** A union over the kinds, so that a `Calibration<"junction">` is a `Calibration`. */
export type Calibration<K extends Findings["kind"] = Findings["kind"]> = {
  readonly [P in K]: Recorded & { readonly findings: FindingsOf<P> };
}[K];

/** As stored: days as midnight UTC, `findings` as JSON text. */
export type StoredCalibration = Omit<Recorded, "route" | "performedOn" | "dueOn"> & {
  readonly route: string;
  readonly performedOn: Date;
  readonly dueOn: Date;
  readonly findings: string;
};

/** typed from paper · read from a digital certificate · the laboratory's own certificate */
export type CalibrationSource = "typed" | "dcc" | "in-house";

/** What stands beside the figures: whose certificate of what, how it came in, and whether it may be used. */
export type CalibrationPapers = {
  readonly source: CalibrationSource;
  /** The serial number as the certificate states it; empty on certificates recorded before it was asked for. */
  readonly itemSerial: string;
  readonly scale: string;
  readonly conditions: string;
  readonly traceabilityStatement: string;
  /** Why another route than an institute, an accredited laboratory or our own was taken, ISO/IEC 17025 6.5.2 and 6.5.3. */
  readonly justification: string;
  readonly fromCelsius: number | null;
  readonly toCelsius: number | null;
  readonly providerId: string | null;
  readonly documentId: string | null;
  readonly inHouseCertificateId: string | null;
  readonly recordedById: string | null;
  readonly recordedAt: Date;
  readonly acceptance: Acceptance;
};

export type CalibrationRecord = Calibration & CalibrationPapers;
