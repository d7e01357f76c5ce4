import { loadLaboratory, saveLaboratory } from "@/lib/data/laboratory/laboratory-store";
import { changedFields } from "@/lib/domain/audit/changed-fields";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { LaboratoryChange } from "@/lib/domain/staff/laboratory-schema";
import { defineOperation } from "../operation";

export const configureLaboratory = defineOperation({
  name: "laboratory/configure",
  permission: "laboratory.configure",
  input: LaboratoryChange,
  perform: async ({ tx }, { version, ...fields }) => {
    const before = await loadLaboratory(tx);
    if (!before) throw new Refused({ code: "not-found", message: "The laboratory is not recorded yet." });
    const changed = changedFields(before, fields);
    if (changed.length === 0)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveLaboratory(tx, version, fields);
    const payload = { changed, performerMaySignOff: fields.performerMaySignOff };
    return {
      value: { id: "laboratory" },
      events: [eventOf(staffEvents.laboratoryConfigured, "laboratory", payload)],
    };
  },
});
