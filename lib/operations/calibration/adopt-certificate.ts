import { lockCertificate } from "@/lib/data/amendment/amendment-store";
import { adoptOwnCertificate } from "@/lib/data/calibration/adopt-own-certificate";
import { loadCalibrationsOf } from "@/lib/data/calibration/calibration-store";
import { loadOwnCertificate } from "@/lib/data/calibration/own-certificates";
import { loadStanding } from "@/lib/data/certificate/standing";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import type { Tx } from "@/lib/data/in-scope";
import { eventOf } from "@/lib/domain/audit/define-event";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import { inHouseCalibration } from "@/lib/domain/calibration/in-house-calibration";
import { AdoptCertificateInput } from "@/lib/domain/calibration/schema";
import { hasEnded, standingSentence } from "@/lib/domain/certificate/standing";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const notHere = (message: string): Refused => new Refused({ code: "not-found", message });
const invalid = (fields: Record<string, string>): Refused =>
  new Refused({ code: "invalid", message: "Nothing was stored.", fields });

/** Locked, so that a withdrawal at the same time finds the standard it throws doubt on. */
const demandNotEnded = async (tx: Tx, number: string, id: string): Promise<void> => {
  await lockCertificate(tx, id);
  const standing = await loadStanding(tx, id);
  if (hasEnded(standing))
    throw new Refused({
      code: "wrong-state",
      message: `${standingSentence(number, standing)} Nothing was stored.`,
    });
};

/** A signed certificate of ours becomes the calibration of the working standard it is of. Accepted by another person, as all are. */
export const adoptCertificate = defineOperation({
  name: "calibration/adopt-certificate",
  permission: "calibration.record",
  input: AdoptCertificateInput,
  perform: async ({ actor, now, tx }, { equipmentId, certificate, dueOn }) => {
    const equipment = await loadEquipment(tx, equipmentId);
    if (!equipment) throw notHere("This equipment is not here.");
    if (equipment.state === "retired")
      throw new Refused({ code: "wrong-state", message: "This equipment is retired." });
    const own = await loadOwnCertificate(tx, certificate);
    if (!own) throw notHere(`There is no certificate ${certificate} of ours.`);
    await demandNotEnded(tx, certificate, own.id);
    const calibration = demand(inHouseCalibration(equipment, own.content));
    if (dueOn <= calibration.performedOn)
      throw invalid({ dueOn: "The due day comes after the day it was performed." });
    const recorded = await loadCalibrationsOf(tx, equipment.id);
    if (recorded.some((one) => one.certificate === certificate && one.acceptance !== "rejected"))
      throw invalid({ certificate: "This certificate is recorded for this equipment already." });
    const { id } = await adoptOwnCertificate(tx, {
      equipmentId: equipment.id,
      certificateId: own.id,
      calibration,
      dueOn,
      recordedById: personIdOf(actor),
      recordedAt: now,
    });
    const { performedOn } = calibration;
    const payload = { tag: equipment.tag, certificate, performedOn, dueOn };
    return {
      value: { id, equipmentId: equipment.id },
      events: [eventOf(calibrationEvents.adopted, equipment.id, payload)],
    };
  },
});
