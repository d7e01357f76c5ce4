import { demandOrder } from "@/lib/data/order/demand-order";
import { insertOrderNote } from "@/lib/data/order/note-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { OrderNoteInput } from "@/lib/domain/order/note";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** What was said about an order, kept as it was said (ISO/IEC 17025:2017, 7.1.8). */
export const noteOrder = defineOperation({
  name: "order.note",
  permission: "order.note",
  input: OrderNoteInput,
  perform: async ({ actor, now, tx }, { number, kind, text, isForCustomer }) => {
    const order = await demandOrder(tx, number);
    await insertOrderNote(tx, {
      orderId: order.id,
      customerId: order.customerId,
      kind,
      text,
      isForCustomer,
      saidById: personIdOf(actor),
      saidAt: now,
    });
    return {
      value: { number },
      events: [eventOf(orderEvents.noted, order.id, { number, kind, isForCustomer })],
    };
  },
});
