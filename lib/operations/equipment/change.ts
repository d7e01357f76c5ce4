import { loadEquipment, saveEquipment } from "@/lib/data/equipment/equipment-store";
import { changedFields } from "@/lib/domain/audit/changed-fields";
import { eventOf } from "@/lib/domain/audit/define-event";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { decideIdentity, decideParticulars } from "@/lib/domain/equipment/rules";
import { EquipmentChange } from "@/lib/domain/equipment/schema";
import type { EquipmentRecord } from "@/lib/domain/equipment/types";
import { demand, Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** What is decided about how often and how well it is calibrated, checked and maintained. */
const programmeOf = (record: EquipmentRecord): string =>
  JSON.stringify({
    calibrationIntervalMonths: record.calibrationIntervalMonths,
    checkIntervalDays: record.checkIntervalDays,
    maintenanceIntervalDays: record.maintenanceIntervalDays,
    requirement: record.requirement,
  });

export const changeEquipment = defineOperation({
  name: "equipment/change",
  permission: "equipment.record",
  input: EquipmentChange,
  perform: async ({ tx }, { id, version, ...fields }) => {
    const before = await loadEquipment(tx, id);
    if (!before) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    demand(decideParticulars(before.particulars, fields.particulars));
    demand(decideIdentity(before.kind, before, fields));
    const { particulars: _, requirement, ...described } = fields;
    const particularsBefore = JSON.stringify(before.particulars);
    const particularsAfter = JSON.stringify(fields.particulars);
    const changed = [
      ...changedFields(
        { ...before, requirement: JSON.stringify(before.requirement) },
        { ...described, requirement: JSON.stringify(requirement) },
      ),
      ...(particularsBefore === particularsAfter ? [] : ["particulars"]),
    ];
    if (changed.length === 0)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveEquipment(tx, id, version, fields);
    const [programmeBefore, programmeAfter] = [programmeOf(before), programmeOf(fields)];
    const payload = {
      tag: before.tag,
      changed,
      particularsBefore,
      particularsAfter,
      ...(programmeBefore === programmeAfter ? {} : { programmeBefore, programmeAfter }),
    };
    return { value: { id }, events: [eventOf(equipmentEvents.changed, id, payload)] };
  },
});
