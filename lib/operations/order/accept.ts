import { demandOrder } from "@/lib/data/order/demand-order";
import { furnaceRanges } from "@/lib/data/order/furnace-ranges";
import { setOrderState } from "@/lib/data/order/set-order-state";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideAcceptance } from "@/lib/domain/order/contract-review";
import { orderEvents } from "@/lib/domain/order/events";
import { AcceptOrderInput } from "@/lib/domain/order/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Contract review (ISO/IEC 17025:2017, 7.1): from here on the order's lines are fixed and its sensors may come. */
export const acceptOrder = defineOperation({
  name: "order.accept",
  permission: "order.accept",
  input: AcceptOrderInput,
  perform: async ({ actor, now, tx }, input) => {
    const order = await demandOrder(tx, input.number);
    const { told } = demand(decideAcceptance(order, await furnaceRanges(tx), input.toldCustomer));
    // The version the reader saw: what was amended meanwhile was not reviewed.
    await setOrderState(tx, { ...order, version: input.version }, "accepted", {
      acceptedById: personIdOf(actor),
      acceptedAt: now,
    });
    const event = eventOf(orderEvents.accepted, order.id, {
      number: order.number,
      version: input.version + 1,
      requirementsUnderstood: input.requirementsUnderstood,
      capabilityAndResources: input.capabilityAndResources,
      externalProviders: input.externalProviders,
      methodSuitable: input.methodSuitable,
      decisionRule: order.decisionRule,
      guardBandRatio: order.guardBandRatio,
      ...(order.falseAcceptancePercent === null
        ? {}
        : { falseAcceptancePercent: order.falseAcceptancePercent }),
      toldCustomer: [...told],
    });
    return { value: { number: order.number }, events: [event] };
  },
});
