import { loadAcceptedCalibrations } from "@/lib/data/calibration/calibration-store";
import { loadAllEquipment } from "@/lib/data/equipment/equipment-store";
import { insertEntry } from "@/lib/data/equipment/logbook-store";
import { equipmentLabels } from "@/lib/documents/label/equipment-labels";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import { EquipmentLabelsInput } from "@/lib/domain/equipment/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Labels of equipment as a PDF. Each printing is an event and a line of the logbook, with the due day that stands on it. */
export const printEquipmentLabels = defineOperation({
  name: "equipment/print-labels",
  permission: "equipment.record",
  input: EquipmentLabelsInput,
  perform: async ({ actor, now, tx }, { ids, publicOrigin }) => {
    const all = (await loadAllEquipment(tx)).filter(({ id }) => ids.includes(id));
    if (all.length === 0 || all.length < new Set(ids).size)
      throw new Refused({ code: "not-found", message: "Some of this equipment is not here." });
    const calibrations = await loadAcceptedCalibrations(tx);
    const today = isoDay(now);
    const labelled = all.map((equipment) => ({
      equipment,
      dueOn:
        calibrationInForce(
          calibrations.filter(({ equipmentId }) => equipmentId === equipment.id),
          today,
        )?.dueOn ?? null,
    }));
    const bytes = await equipmentLabels(
      labelled.map(({ equipment: { tag, serial, kind }, dueOn }) => ({
        tag,
        serial,
        kind: equipmentKindLabels[kind],
        dueOn,
        address: `${publicOrigin}/standards/${encodeURIComponent(tag)}/status`,
      })),
      now,
    );
    const events: AuditEvent[] = [];
    for (const { equipment, dueOn } of labelled) {
      await insertEntry(tx, equipment.id, {
        kind: "label",
        happenedOn: today,
        outcome: "none",
        summary: dueOn ? `Label printed, due ${dueOn}` : "Label printed, without a due day",
        figures: { kind: "label", dueOn },
        recordedById: personIdOf(actor),
        recordedAt: now,
      });
      events.push(eventOf(equipmentEvents.labelPrinted, equipment.id, { tag: equipment.tag, dueOn }));
    }
    return { value: { bytes }, events: events as [AuditEvent, ...AuditEvent[]] };
  },
});
