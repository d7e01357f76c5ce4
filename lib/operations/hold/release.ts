import { loadHoldToEnd } from "@/lib/data/hold/load-hold";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideRelease } from "@/lib/domain/hold/decide-release";
import { holdEvents } from "@/lib/domain/hold/events";
import { ReleaseHoldInput } from "@/lib/domain/hold/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Ends a hold: as ordered, with a disclaimer on the certificate, or by handing back unmeasured. */
export const releaseHold = defineOperation({
  name: "hold/release",
  permission: "hold.release",
  input: ReleaseHoldInput,
  perform: async ({ actor, now, tx }, { holdId, ...end }) => {
    const hold = await loadHoldToEnd(tx, holdId);
    if (!hold)
      throw new Refused({ code: "not-found", message: "This hold is not here. Nothing was changed." });
    demand(decideRelease(hold, end));
    const { customerId, orderNumber, tag } = hold;
    const by = { releasedById: personIdOf(actor), releasedAt: now };
    await tx.holdRelease.create({ data: { holdId, customerId, ...end, ...by } });
    const { awaitsAnother, ...said } = end;
    const payload = { orderNumber, tag, ...said, ...(awaitsAnother ? { awaitsAnother } : {}) };
    return { value: { orderNumber, tag }, events: [eventOf(holdEvents.released, holdId, payload)] };
  },
});
