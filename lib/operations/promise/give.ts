import { demandOrder } from "@/lib/data/order/demand-order";
import { releaseSlots, releaseUsedUp, savePromise, takeSlots } from "@/lib/data/promise/plan-store";
import { proposeFor } from "@/lib/data/promise/propose";
import { lockName } from "@/lib/data/sql/lock-name";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { decidePromise } from "@/lib/domain/promise/decide-promise";
import { promiseEvents } from "@/lib/domain/promise/events";
import { GivePromiseInput } from "@/lib/domain/promise/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/**
 * Promises a day, and takes the furnace hours that were proposed for it. One at a time: who proposed on the same hours
 * is told the new day instead of getting them too.
 */
export const givePromise = defineOperation({
  name: "promise/give",
  permission: "order.accept",
  input: GivePromiseInput,
  perform: async ({ actor, now, tx }, input) => {
    await lockName(tx, "furnace plan");
    const order = await demandOrder(tx, input.number);
    const { policy, proposal, shown } = await proposeFor(tx, order, input.arrivesOn, now);
    if (shown !== input.shown)
      throw new Refused({
        code: "changed-meanwhile",
        message: `The furnaces were planned anew since this page was opened. Nothing was promised; ${
          proposal.kind === "proposed" ? `now they allow ${proposal.promisedOn}` : proposal.reason
        }. Reload the page.`,
      });
    demand(decidePromise(order.state, proposal, input, isoDay(now)));
    await releaseSlots(tx, order.id);
    await releaseUsedUp(tx, now);
    const slots = proposal.kind === "proposed" ? proposal.slots : [];
    await takeSlots(tx, order.id, slots, { takenById: personIdOf(actor), takenAt: now });
    const proposedOn = proposal.kind === "proposed" ? proposal.promisedOn : null;
    const furnaceHours = proposal.kind === "proposed" ? proposal.furnaceHours : 0;
    const reason = input.promisedOn === proposedOn ? "" : input.reason;
    const basis = {
      ...{ proposedOn, furnaceHours, reason, reckonedAt: now.toISOString(), arrivesOn: input.arrivesOn },
      slots: slots.map(({ furnaceTag, startsAt, endsAt, sensors, setpointsCelsius }) => ({
        ...{ furnace: furnaceTag, sensors, setpointsCelsius: [...setpointsCelsius] },
        startsAt: new Date(startsAt).toISOString(),
        endsAt: new Date(endsAt).toISOString(),
      })),
      ahead: proposal.kind === "proposed" ? [...proposal.ahead] : [],
      policy: { ...policy, workingDays: [...policy.workingDays] },
    };
    await savePromise(tx, order.id, input.promisedOn, canonical(basis));
    const { promisedOn } = input;
    const event = eventOf(promiseEvents.given, order.id, {
      ...{ orderNumber: order.number, promisedOn, proposedOn, furnaceHours, reason },
      slots: slots.length,
    });
    return { value: { orderNumber: order.number, promisedOn }, events: [event] };
  },
});
