import { z } from "zod";
import { nextNumber } from "@/lib/data/number/next-number";
import { copyOrder } from "@/lib/data/order/copy-order";
import { loadSince } from "@/lib/data/order/load-since";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { changesSince } from "@/lib/domain/order/changes-since";
import { orderEvents } from "@/lib/domain/order/events";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation, type OperationContext } from "../operation";

const Input = z.strictObject({ number: z.string().max(40) });

const demandRepeatable = (order: OfferedOrder | null): OfferedOrder => {
  if (!order)
    throw new Refused({ code: "not-found", message: "This order is not here. Nothing was stored." });
  if (order.state === "requested")
    throw new Refused({
      code: "wrong-state",
      message: "This order is a request that nobody has looked at yet; there is nothing to repeat.",
    });
  return order;
};

const repeat = async (
  { actor, now, tx }: OperationContext,
  order: OfferedOrder,
  state: "recorded" | "requested",
) => {
  const changes = changesSince(await loadSince(tx, order, now));
  const year = now.getUTCFullYear();
  const number = `O-${year}-${String(await nextNumber(tx, `order-${year}`)).padStart(4, "0")}`;
  const orderId = await copyOrder(tx, order.id, {
    ...{ number, state, recordedById: personIdOf(actor), recordedAt: now },
  });
  const { customerId, lines } = order;
  const counts = { lines: lines.length, quantity: lines.reduce((sum, line) => sum + line.quantity, 0) };
  const first =
    state === "recorded"
      ? eventOf(orderEvents.recorded, orderId, { number, customerId, ...counts })
      : eventOf(orderEvents.requested, orderId, { number, customerId, origin: "portal" as const, ...counts });
  const second = eventOf(orderEvents.repeated, orderId, {
    number,
    repeats: order.number,
    changes: [...changes],
  });
  return { value: { number, changes }, events: [first, second] as const };
};

/** The desk: a new order as an earlier one was, to be reviewed anew; with what is not as it was. */
export const repeatOrder = defineOperation({
  name: "order.repeat",
  permission: "order.record",
  input: Input,
  perform: async (context, { number }) =>
    repeat(context, demandRepeatable(await loadOfferedOrder(context.tx, number)), "recorded"),
});

/** The customer, of an own order: a request that the desk then takes over. */
export const repeatOrderInPortal = defineOperation({
  name: "order.repeat-in-portal",
  permission: "portal.order",
  scope: "laboratory",
  input: Input,
  perform: async (context, { number }) => {
    const order = await loadOfferedOrder(context.tx, number);
    demandOwn(context.actor, order?.customerId);
    return repeat(context, demandRepeatable(order), "requested");
  },
});
