import { loadProvider, approveProvider as saveApproval } from "@/lib/data/provider/provider-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { providerEvents } from "@/lib/domain/provider/events";
import { ApproveProviderInput } from "@/lib/domain/provider/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** From a day to a day, for kinds of equipment, with what it rests on; again to renew it, or after a suspension. */
export const approveProvider = defineOperation({
  name: "provider/approve",
  permission: "provider.record",
  input: ApproveProviderInput,
  perform: async ({ tx }, { id, version, ...approval }) => {
    const provider = await loadProvider(tx, id);
    if (!provider) throw new Refused({ code: "not-found", message: "This provider is not here." });
    await saveApproval(tx, id, version, approval);
    return {
      value: { id },
      events: [
        eventOf(providerEvents.approved, id, {
          name: provider.name,
          from: approval.approvedFrom,
          until: approval.approvedUntil,
          kinds: approval.scope.map(({ kind }) => kind),
          note: approval.note,
        }),
      ],
    };
  },
});
