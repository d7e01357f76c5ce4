import { insertConfiguration } from "@/lib/data/furnace/configuration-store";
import { loadFurnace } from "@/lib/data/furnace/furnace-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideConfiguration } from "@/lib/domain/furnace/decide-configuration";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { ConfigurationInput } from "@/lib/domain/furnace/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const recordConfiguration = defineOperation({
  name: "furnace/record-configuration",
  permission: "furnace.record",
  input: ConfigurationInput,
  perform: async ({ tx }, input) => {
    const furnace = await loadFurnace(tx, input.furnaceId);
    if (!furnace) throw new Refused({ code: "not-found", message: "This furnace is not here." });
    demand(decideConfiguration(input, furnace));
    const { id } = await insertConfiguration(tx, input);
    const payload = { tag: furnace.tag, configurationId: id, name: input.name };
    return {
      value: { id, furnaceId: furnace.id },
      events: [eventOf(furnaceEvents.configurationRecorded, furnace.id, payload)],
    };
  },
});
