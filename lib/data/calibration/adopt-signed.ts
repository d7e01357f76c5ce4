import type { Tx } from "@/lib/data/in-scope";
import { inHouseCalibration, isCertificateOf } from "@/lib/domain/calibration/in-house-calibration";
import { monthsAfter } from "@/lib/domain/calibration/months-after";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { readEquipment } from "@/lib/domain/equipment/read-equipment";
import { adoptOwnCertificate } from "./adopt-own-certificate";

type Signed = {
  readonly certificateId: string;
  readonly content: CertificateContent;
  readonly signedById: string;
  readonly signedAt: Date;
};

/** Where nothing else is set for the equipment. */
const usualMonths = 12;

/**
 * A certificate just signed, of an order of the laboratory's own, becomes a calibration of the working standard with its
 * serial number and type by itself. It waits for another person's acceptance like any other. Null: it is of none.
 */
export const adoptSigned = async (tx: Tx, { certificateId, content, signedById, signedAt }: Signed) => {
  const rows = await tx.equipment.findMany({ where: { kind: "reference", state: { not: "retired" } } });
  const row = rows.find((one) => isCertificateOf(readEquipment(one), content));
  const calibration = row && inHouseCalibration(readEquipment(row), content);
  if (!row || !calibration?.ok) return null;
  const { certificate, performedOn } = calibration.value;
  const dueOn = monthsAfter(performedOn, row.calibrationIntervalMonths ?? usualMonths);
  await adoptOwnCertificate(tx, {
    equipmentId: row.id,
    certificateId,
    calibration: calibration.value,
    dueOn,
    recordedById: signedById,
    recordedAt: signedAt,
  });
  return { equipmentId: row.id, payload: { tag: row.tag, certificate, performedOn, dueOn } };
};
