import type { Tx } from "@/lib/data/in-scope";
import { calibratedRange } from "@/lib/domain/calibration/calibrated-range";
import type { InHouseCalibration } from "@/lib/domain/calibration/in-house-calibration";
import { insertCalibration } from "./calibration-store";

type Adoption = {
  readonly equipmentId: string;
  readonly certificateId: string;
  readonly calibration: InHouseCalibration;
  readonly dueOn: string;
  readonly recordedById: string;
  readonly recordedAt: Date;
};

/** Our own certificate as a calibration, bound to it by its id: the chain goes on through its results. */
export const adoptOwnCertificate = (
  tx: Tx,
  { equipmentId, certificateId, calibration, dueOn, recordedById, recordedAt }: Adoption,
) =>
  insertCalibration(tx, {
    ...calibration,
    ...(calibratedRange(calibration.findings, { fromCelsius: null, toCelsius: null }) ?? {
      fromCelsius: null,
      toCelsius: null,
    }),
    equipmentId,
    accreditation: "",
    route: "in-house",
    justification: "",
    source: "in-house",
    dueOn,
    providerId: null,
    documentId: null,
    inHouseCertificateId: certificateId,
    differences: "[]",
    parents: [],
    recordedById,
    recordedAt,
  });
