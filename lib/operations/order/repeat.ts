import { z } from "zod";
import { nextNumber } from "@/lib/data/number/next-number";
import { copyOrder } from "@/lib/data/order/copy-order";
import { loadSince } from "@/lib/data/order/load-since";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { changesSince } from "@/lib/domain/order/changes-since";
import { orderEvents } from "@/lib/domain/order/events";
import { decideRepeatable } from "@/lib/domain/order/repeatable";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const Input = z.strictObject({ number: z.string().max(40) });

/** The desk: a new order as an earlier one was, to be reviewed anew; with what is not as it was. */
export const repeatOrder = defineOperation({
  name: "order.repeat",
  permission: "order.record",
  input: Input,
  perform: async ({ actor, now, tx }, input) => {
    const order = demand(decideRepeatable(await loadOfferedOrder(tx, input.number)));
    const changes = changesSince(await loadSince(tx, order, now));
    const year = now.getUTCFullYear();
    const number = `O-${year}-${String(await nextNumber(tx, `order-${year}`)).padStart(4, "0")}`;
    const orderId = await copyOrder(tx, order.id, {
      number,
      recordedById: personIdOf(actor),
      recordedAt: now,
    });
    const { customerId, lines } = order;
    const quantity = lines.reduce((sum, line) => sum + line.quantity, 0);
    const events = [
      eventOf(orderEvents.recorded, orderId, { number, customerId, lines: lines.length, quantity }),
      eventOf(orderEvents.repeated, orderId, { number, repeats: order.number, changes: [...changes] }),
    ] as const;
    return { value: { number, changes }, events };
  },
});
