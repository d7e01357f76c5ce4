import { insertFurnace } from "@/lib/data/furnace/furnace-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { FurnaceInput } from "@/lib/domain/furnace/schema";
import { defineOperation } from "../operation";

export const recordFurnace = defineOperation({
  name: "furnace/record",
  permission: "furnace.record",
  input: FurnaceInput,
  perform: async ({ tx }, input) => {
    const { id, equipmentId } = await insertFurnace(tx, input);
    const { tag } = input;
    return {
      value: { id, equipmentId },
      events: [
        eventOf(furnaceEvents.recorded, id, { tag }),
        eventOf(equipmentEvents.recorded, equipmentId, { tag, kind: "furnace" as const }),
      ],
    };
  },
});
