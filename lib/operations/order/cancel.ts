import { demandOrder } from "@/lib/data/order/demand-order";
import { insertOrderNote } from "@/lib/data/order/note-store";
import { setOrderState } from "@/lib/data/order/set-order-state";
import { freeHours } from "@/lib/data/promise/free-hours";
import { eventOf } from "@/lib/domain/audit/define-event";
import { cancellationNote } from "@/lib/domain/order/cancellation";
import { orderEvents } from "@/lib/domain/order/events";
import { CancelOrderInput } from "@/lib/domain/order/schema";
import { decideCancellation } from "@/lib/domain/order/transitions";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/**
 * The order will not be done. Its record stays, its customer reads why; furnace hours it had are free at once, and sensors
 * on the shelf are then handed back.
 */
export const cancelOrder = defineOperation({
  name: "order.cancel",
  permission: "order.accept",
  input: CancelOrderInput,
  perform: async ({ actor, now, tx }, input) => {
    const order = await demandOrder(tx, input.number);
    const sensors = order.lines.flatMap((line) => line.sensors);
    const state = demand(decideCancellation(order.state, sensors));
    await setOrderState(tx, order, state);
    await freeHours(tx, order.id);
    await insertOrderNote(tx, {
      orderId: order.id,
      customerId: order.customerId,
      kind: "told-customer",
      text: cancellationNote(input.reason),
      isForCustomer: true,
      saidById: personIdOf(actor),
      saidAt: now,
    });
    const event = eventOf(orderEvents.cancelled, order.id, { number: order.number, reason: input.reason });
    return { value: { number: order.number }, events: [event] };
  },
});
