import { insertFurnace } from "@/lib/data/furnace/furnace-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { FurnaceInput } from "@/lib/domain/furnace/schema";
import { defineOperation } from "../operation";

export const recordFurnace = defineOperation({
  name: "furnace/record",
  permission: "furnace.record",
  input: FurnaceInput,
  perform: async ({ tx }, input) => {
    const { id } = await insertFurnace(tx, input);
    return { value: { id }, events: [eventOf(furnaceEvents.recorded, id, { tag: input.tag })] };
  },
});
