import { demandOrder } from "@/lib/data/order/demand-order";
import { insertSettlement, loadDifferences } from "@/lib/data/order/difference-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideSettle, SettleDifferenceInput } from "@/lib/domain/order/difference";
import { orderEvents } from "@/lib/domain/order/events";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A difference is settled with a person of the customer's (ISO/IEC 17025:2017, 7.1.4). */
export const settleDifference = defineOperation({
  name: "order.difference-settle",
  permission: "order.record",
  input: SettleDifferenceInput,
  perform: async ({ actor, now, tx }, { number, differenceId, text, agreedWith }) => {
    const order = await demandOrder(tx, number);
    demand(decideSettle(await loadDifferences(tx, order.id), differenceId));
    await insertSettlement(tx, {
      differenceId,
      customerId: order.customerId,
      text,
      agreedWith,
      settledById: personIdOf(actor),
      settledAt: now,
    });
    return {
      value: { number },
      events: [eventOf(orderEvents.differenceSettled, order.id, { number, difference: differenceId })],
    };
  },
});
