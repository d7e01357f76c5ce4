import { demandOrder } from "@/lib/data/order/demand-order";
import { setOrderState } from "@/lib/data/order/set-order-state";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { CancelOrderInput } from "@/lib/domain/order/schema";
import { decideCancellation } from "@/lib/domain/order/transitions";
import { demand } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** The order will not be done. Its record stays; sensors on the shelf are then handed back. */
export const cancelOrder = defineOperation({
  name: "order.cancel",
  permission: "order.accept",
  input: CancelOrderInput,
  perform: async ({ tx }, input) => {
    const order = await demandOrder(tx, input.number);
    const sensors = order.lines.flatMap((line) => line.sensors);
    const state = demand(decideCancellation(order.state, sensors));
    await setOrderState(tx, order, state);
    const event = eventOf(orderEvents.cancelled, order.id, { number: order.number, reason: input.reason });
    return { value: { number: order.number }, events: [event] };
  },
});
