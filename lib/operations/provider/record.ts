import { insertProvider } from "@/lib/data/provider/provider-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { providerEvents } from "@/lib/domain/provider/events";
import { ProviderInput } from "@/lib/domain/provider/schema";
import { defineOperation } from "../operation";

/** Who might calibrate for the laboratory. It counts for nothing until it is approved. */
export const recordProvider = defineOperation({
  name: "provider/record",
  permission: "provider.record",
  input: ProviderInput,
  perform: async ({ tx }, input) => {
    const { id } = await insertProvider(tx, input);
    return {
      value: { id },
      events: [eventOf(providerEvents.recorded, id, { name: input.name, route: input.route })],
    };
  },
});
