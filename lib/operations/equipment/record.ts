import { insertEquipment } from "@/lib/data/equipment/equipment-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { decideRecorded } from "@/lib/domain/equipment/rules";
import { EquipmentInput } from "@/lib/domain/equipment/schema";
import { demand } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const recordEquipment = defineOperation({
  name: "equipment/record",
  permission: "equipment.record",
  input: EquipmentInput,
  perform: async ({ tx }, input) => {
    demand(decideRecorded(input.particulars));
    const { id } = await insertEquipment(tx, input);
    return {
      value: { id },
      events: [eventOf(equipmentEvents.recorded, id, { tag: input.tag, kind: input.particulars.kind })],
    };
  },
});
