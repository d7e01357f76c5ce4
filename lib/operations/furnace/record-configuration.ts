import { insertConfiguration } from "@/lib/data/furnace/configuration-store";
import { loadFurnace } from "@/lib/data/furnace/furnace-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { ConfigurationInput } from "@/lib/domain/furnace/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const recordConfiguration = defineOperation({
  name: "furnace/record-configuration",
  permission: "furnace.record",
  input: ConfigurationInput,
  perform: async ({ tx }, input) => {
    const furnace = await loadFurnace(tx, input.furnaceId);
    if (!furnace) throw new Refused({ code: "not-found", message: "This furnace is not here." });
    if (input.immersionMillimetre > furnace.lengthMillimetre)
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored; what you typed is still here.",
        fields: { immersionMillimetre: `The furnace is ${furnace.lengthMillimetre} mm long.` },
      });
    const { id } = await insertConfiguration(tx, input);
    const payload = { tag: furnace.tag, configurationId: id, name: input.name };
    return {
      value: { id, furnaceId: furnace.id },
      events: [eventOf(furnaceEvents.configurationRecorded, furnace.id, payload)],
    };
  },
});
