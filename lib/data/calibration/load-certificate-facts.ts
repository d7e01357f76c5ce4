import type { Tx } from "@/lib/data/in-scope";
import { loadProvider, loadProviderNamed } from "@/lib/data/provider/provider-store";
import type { CertificateFacts } from "@/lib/domain/calibration/certificate-facts";
import type { CalibrationRecord } from "@/lib/domain/calibration/types";
import { readEquipment } from "@/lib/domain/equipment/read-equipment";
import { readRequirement } from "@/lib/domain/equipment/requirement";
import { isApprovedFor } from "@/lib/domain/provider/is-approved-for";
import { loadCalibrationsOf } from "./calibration-store";

/** A certificate from before providers were kept names its issuer only. */
export const loadIssuer = (tx: Tx, calibration: Pick<CalibrationRecord, "providerId" | "issuer">) =>
  calibration.providerId
    ? loadProvider(tx, calibration.providerId)
    : loadProviderNamed(tx, calibration.issuer);

/** What the acceptance of a calibration is judged by: its equipment, its issuer, and the accepted one before it. */
export const loadCertificateFacts = async (
  tx: Tx,
  calibration: CalibrationRecord,
  parents: number,
): Promise<CertificateFacts> => {
  const row = await tx.equipment.findUniqueOrThrow({ where: { id: calibration.equipmentId } });
  const equipment = readEquipment(row);
  const others = await loadCalibrationsOf(tx, equipment.id);
  const earlier = others.find(
    ({ id, acceptance, performedOn }) =>
      id !== calibration.id && acceptance === "accepted" && performedOn <= calibration.performedOn,
  );
  return {
    equipment,
    requirement: readRequirement(row.requirement),
    calibration,
    parents,
    isIssuerApproved: isApprovedFor(
      await loadIssuer(tx, calibration),
      equipment.kind,
      calibration.performedOn,
    ),
    earlier: earlier ?? null,
  };
};
