import type { CertificateContent, CertificateStandard } from "../certificate/content";
import { routeLabels, standardRoleLabels } from "../certificate/labels";

/** A calibration against the days of a run. */
export type CalibrationStanding = "in-date" | "not-in-date" | "no-certificate" | "not-dated";

export type TraceLine = {
  readonly standard: CertificateStandard;
  readonly role: string;
  readonly route: string;
  readonly standing: CalibrationStanding;
};

/** A calibration on the days of a run: from its day to its due day, both included. */
export const standingOn = (
  standard: CertificateStandard,
  run: { readonly performedFrom: string; readonly performedTo: string },
): CalibrationStanding => {
  if (standard.calibrationCertificate === "") return "no-certificate";
  if (standard.performedOn > run.performedFrom) return "not-in-date";
  if (standard.dueOn === "") return "not-dated";
  return run.performedTo <= standard.dueOn ? "in-date" : "not-in-date";
};

/** What a certificate says it stands on, each with its standing on the days of the run. The chain behind is `chain.ts`. */
export const traceCertificate = (content: CertificateContent): readonly TraceLine[] =>
  content.standards.map((standard) => ({
    standard,
    role: standardRoleLabels[standard.role],
    route: routeLabels[standard.route] ?? standard.route,
    standing: standingOn(standard, content),
  }));
