import { loadFurnace, saveFurnace } from "@/lib/data/furnace/furnace-store";
import { changedFields } from "@/lib/domain/audit/changed-fields";
import { eventOf } from "@/lib/domain/audit/define-event";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { FurnaceChange } from "@/lib/domain/furnace/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const changeFurnace = defineOperation({
  name: "furnace/change",
  permission: "furnace.record",
  input: FurnaceChange,
  perform: async ({ tx }, { id, version, ...fields }) => {
    const before = await loadFurnace(tx, id);
    if (!before) throw new Refused({ code: "not-found", message: "This furnace is not here." });
    const changed = changedFields(
      { ...before },
      { ...fields, controllerSetpoints: JSON.stringify(fields.controllerSetpoints) },
    );
    if (changed.length === 0)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveFurnace(tx, id, version, fields);
    return { value: { id }, events: [eventOf(furnaceEvents.changed, id, { tag: before.tag, changed })] };
  },
});
