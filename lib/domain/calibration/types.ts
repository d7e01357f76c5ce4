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
