import { loadAcceptedCalibrations } from "@/lib/data/calibration/calibration-store";
import { loadAllEquipment } from "@/lib/data/equipment/equipment-store";
import { type DueState, dueState } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import type { EquipmentKind, EquipmentState } from "@/lib/domain/equipment/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type StandardRow = {
  readonly id: string;
  readonly tag: string;
  readonly kind: EquipmentKind;
  readonly typeLetter: string | null;
  readonly model: string;
  readonly serial: string;
  readonly state: EquipmentState;
  readonly certificate: string | null;
  readonly issuer: string | null;
  readonly dueOn: string | null;
  readonly due: DueState;
};

/** What the laboratory measures with, each with the calibration that counts today. */
export const standardsView = (actor: Actor, today: string): Promise<StandardRow[]> =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = await loadAllEquipment(tx);
    const calibrations = await loadAcceptedCalibrations(tx);
    return equipment.map((one) => {
      const own = calibrations.filter((calibration) => calibration.equipmentId === one.id);
      const inForce = calibrationInForce(own, today);
      return {
        id: one.id,
        tag: one.tag,
        kind: one.kind,
        typeLetter: one.particulars.kind === "reference" ? one.particulars.type : null,
        model: [one.maker, one.model].filter(Boolean).join(", "),
        serial: one.serial,
        state: one.state,
        certificate: inForce?.certificate ?? null,
        issuer: inForce?.issuer ?? null,
        dueOn: inForce?.dueOn ?? null,
        due: dueState(inForce?.dueOn ?? null, today),
      };
    });
  });
