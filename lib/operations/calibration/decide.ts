import { insertCalibrationDecision, loadCalibration } from "@/lib/data/calibration/calibration-store";
import { loadCertificateFacts } from "@/lib/data/calibration/load-certificate-facts";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { assessCalibration } from "@/lib/domain/calibration/assess-calibration";
import { decideCalibrationUse } from "@/lib/domain/calibration/decide-calibration";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import { DecideCalibrationInput } from "@/lib/domain/calibration/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A second person accepts a calibration for use, with each answer confirmed, or rejects it with a reason. */
export const decideCalibration = defineOperation({
  name: "calibration/decide",
  permission: "calibration.accept",
  input: DecideCalibrationInput,
  perform: async ({ actor, now, tx }, { id, decision, confirmed, reason }) => {
    const found = await loadCalibration(tx, id);
    const equipment = found && (await loadEquipment(tx, found.calibration.equipmentId));
    if (!found || !equipment)
      throw new Refused({ code: "not-found", message: "This calibration is not here." });
    const { calibration, decisions, parents } = found;
    const personId = personIdOf(actor);
    const checks = assessCalibration(await loadCertificateFacts(tx, calibration, parents.length));
    const { recordedById } = calibration;
    demand(decideCalibrationUse({ personId, recordedById, decisions, checks, decision, confirmed, reason }));
    await insertCalibrationDecision(tx, {
      calibrationId: id,
      decision,
      checks,
      reason,
      decidedById: personId,
      decidedAt: now,
    });
    const { certificate, performedOn } = calibration;
    const payload = { tag: equipment.tag, certificate, performedOn, reason };
    return {
      value: { id, equipmentId: equipment.id },
      events: [eventOf(calibrationEvents[decision], equipment.id, payload)],
    };
  },
});
