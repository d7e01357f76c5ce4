import { loadCalibrationsOf } from "@/lib/data/calibration/calibration-store";
import { loadOwnCertificatesOf } from "@/lib/data/calibration/own-certificates";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { dueState } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

/** One piece of equipment with every calibration it ever had, newest first; in force is one that was accepted. */
export const equipmentView = (actor: Actor, id: string, today: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = found(await loadEquipment(tx, id));
    const calibrations = await loadCalibrationsOf(tx, equipment.id);
    const accepted = calibrations.filter(({ acceptance }) => acceptance === "accepted");
    const inForce = calibrationInForce(accepted.toReversed(), today);
    const mayCalibrate = actor.kind !== "system" && may(actor.roles, "calibration.record");
    return {
      equipment,
      calibrations,
      inForceId: inForce?.id ?? null,
      due: dueState(inForce?.dueOn ?? null, today),
      mayChange: actor.kind !== "system" && may(actor.roles, "equipment.record"),
      mayCalibrate,
      mayAdopt: mayCalibrate && (await loadOwnCertificatesOf(tx, equipment)).length > 0,
    };
  });
