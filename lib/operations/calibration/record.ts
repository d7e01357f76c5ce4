import { insertCalibration, loadCalibrationsOf } from "@/lib/data/calibration/calibration-store";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { loadProviderNamed } from "@/lib/data/provider/provider-store";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { calibratedRange } from "@/lib/domain/calibration/calibrated-range";
import { decideRecord } from "@/lib/domain/calibration/decide-record";
import { isoDay } from "@/lib/domain/calibration/due";
import { CalibrationInput } from "@/lib/domain/calibration/schema";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { keepCertificate } from "./keep-certificate";

/** A certificate as it stands, with its file and what it stands on. It waits for a second person before it is used. */
export const recordCalibration = defineOperation({
  name: "calibration/record",
  permission: "calibration.record",
  input: CalibrationInput,
  perform: async ({ actor, now, tx }, input) => {
    const equipment = await loadEquipment(tx, input.equipmentId);
    if (!equipment) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    const provider = input.route === "in-house" ? null : await loadProviderNamed(tx, input.issuer);
    const recorded = await loadCalibrationsOf(tx, equipment.id);
    const standing = recorded
      .filter(({ acceptance }) => acceptance !== "rejected")
      .map(({ certificate }) => certificate);
    demand(decideRecord({ equipment, input, provider, today: isoDay(now), standing }));
    const recordedById = personIdOf(actor);
    const { document, reasons: _reasons, ...fields } = input;
    const kept = await keepCertificate(tx, { equipment, input, receivedById: recordedById, receivedAt: now });
    const stated = { fromCelsius: input.fromCelsius ?? null, toCelsius: input.toCelsius ?? null };
    const { id } = await insertCalibration(tx, {
      ...fields,
      accreditation: input.accreditation || (provider?.accreditation ?? ""),
      ...(calibratedRange(input.findings, stated) ?? stated),
      source: document?.kind === "digital" ? "dcc" : "typed",
      providerId: provider?.id ?? null,
      documentId: kept.documentId,
      inHouseCertificateId: null,
      differences: JSON.stringify(kept.differences),
      recordedById,
      recordedAt: now,
    });
    const { certificate, performedOn, dueOn } = input;
    const event = eventOf(equipmentEvents.calibrationRecorded, equipment.id, {
      tag: equipment.tag,
      certificate,
      performedOn,
      dueOn,
    });
    const events: readonly [AuditEvent, ...AuditEvent[]] = [event, ...kept.events];
    return { value: { id, equipmentId: equipment.id }, events };
  },
});
