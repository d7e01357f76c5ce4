import { loadEquipment, saveEquipment } from "@/lib/data/equipment/equipment-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { decideState } from "@/lib/domain/equipment/rules";
import { EquipmentStateChange } from "@/lib/domain/equipment/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const setEquipmentState = defineOperation({
  name: "equipment/set-state",
  permission: "equipment.record",
  input: EquipmentStateChange,
  perform: async ({ tx }, { id, version, state, reason }) => {
    const before = await loadEquipment(tx, id);
    if (!before) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    const to = demand(decideState(before.state, state));
    await saveEquipment(tx, id, version, { state: to });
    const payload = { tag: before.tag, from: before.state, to, reason };
    return { value: { id }, events: [eventOf(equipmentEvents.stateSet, id, payload)] };
  },
});
