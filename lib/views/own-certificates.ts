import { loadOwnCertificatesOf } from "@/lib/data/calibration/own-certificates";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { inHouseCalibration } from "@/lib/domain/calibration/in-house-calibration";
import { monthsAfter } from "@/lib/domain/calibration/months-after";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

/** Signed certificates of ours that calibrate this working standard, with the figures that would be taken over. */
export const ownCertificatesView = (actor: Actor, equipmentId: string) =>
  answer(actor, "calibration.record", async (tx) => {
    const equipment = found(await loadEquipment(tx, equipmentId));
    const row = await tx.equipment.findUniqueOrThrow({
      where: { id: equipment.id },
      select: { calibrationIntervalMonths: true },
    });
    const certificates = await loadOwnCertificatesOf(tx, equipment);
    return {
      equipment,
      certificates: certificates.flatMap(({ content }) => {
        const calibration = inHouseCalibration(equipment, content);
        if (!calibration.ok) return [];
        const { value } = calibration;
        return [{ ...value, dueOn: monthsAfter(value.performedOn, row.calibrationIntervalMonths ?? 12) }];
      }),
    };
  });
