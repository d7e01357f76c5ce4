import { demandOrder } from "@/lib/data/order/demand-order";
import { insertDifference } from "@/lib/data/order/difference-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideRaise, RaiseDifferenceInput } from "@/lib/domain/order/difference";
import { orderEvents } from "@/lib/domain/order/events";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** What was asked and what can be done differ: it stays open until it is settled with the customer. */
export const raiseDifference = defineOperation({
  name: "order.difference-raise",
  permission: "order.record",
  input: RaiseDifferenceInput,
  perform: async ({ actor, now, tx }, { number, text }) => {
    const order = await demandOrder(tx, number);
    demand(decideRaise(order.state));
    const { id } = await insertDifference(tx, {
      orderId: order.id,
      customerId: order.customerId,
      text,
      raisedById: personIdOf(actor),
      raisedAt: now,
    });
    return {
      value: { number, differenceId: id },
      events: [eventOf(orderEvents.differenceRaised, order.id, { number, difference: id })],
    };
  },
});
