import { insertCalibration } from "@/lib/data/calibration/calibration-store";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { CalibrationInput } from "@/lib/domain/calibration/schema";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { decideCalibration } from "@/lib/domain/equipment/rules";
import { demand, Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const recordCalibration = defineOperation({
  name: "calibration/record",
  permission: "calibration.record",
  input: CalibrationInput,
  perform: async ({ actor, now, tx }, input) => {
    const equipment = await loadEquipment(tx, input.equipmentId);
    if (!equipment) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    demand(decideCalibration(equipment, input.findings.kind, isoDay(now), input.performedOn));
    const { id } = await insertCalibration(tx, {
      ...input,
      recordedById: actor.kind === "system" ? null : actor.personId,
      recordedAt: now,
    });
    const { certificate, performedOn, dueOn } = input;
    return {
      value: { id, equipmentId: equipment.id },
      events: [
        eventOf(equipmentEvents.calibrationRecorded, equipment.id, {
          tag: equipment.tag,
          certificate,
          performedOn,
          dueOn,
        }),
      ],
    };
  },
});
