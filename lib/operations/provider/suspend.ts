import { loadProvider, suspendProvider as saveSuspension } from "@/lib/data/provider/provider-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { providerEvents } from "@/lib/domain/provider/events";
import { SuspendProviderInput } from "@/lib/domain/provider/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** From now on nothing it calibrated is chosen for a run; results that stand on it keep it, and are flagged. */
export const suspendProvider = defineOperation({
  name: "provider/suspend",
  permission: "provider.record",
  input: SuspendProviderInput,
  perform: async ({ tx }, { id, version, reason }) => {
    const provider = await loadProvider(tx, id);
    if (!provider) throw new Refused({ code: "not-found", message: "This provider is not here." });
    if (provider.state !== "approved")
      throw new Refused({
        code: "wrong-state",
        message: `${provider.name} is not approved. Nothing changed.`,
      });
    await saveSuspension(tx, id, version);
    return {
      value: { id },
      events: [eventOf(providerEvents.suspended, id, { name: provider.name, reason })],
    };
  },
});
