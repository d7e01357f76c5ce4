import { isoDay } from "./due";
import { Findings } from "./findings";
import { type Calibration, routes, type StoredCalibration } from "./types";

/** A stored calibration read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readCalibration = (row: StoredCalibration): Calibration =>
  ({
    id: row.id,
    equipmentId: row.equipmentId,
    certificate: row.certificate,
    issuer: row.issuer,
    accreditation: row.accreditation,
    route: routes.find((known) => known === row.route) ?? "other",
    performedOn: isoDay(row.performedOn),
    dueOn: isoDay(row.dueOn),
    findings: Findings.parse(JSON.parse(row.findings)),
  }) as Calibration;

export const isCalibrationOf = <K extends Findings["kind"]>(
  calibration: Calibration,
  kind: K,
): calibration is Extract<Calibration, { findings: { kind: K } }> => calibration.findings.kind === kind;
