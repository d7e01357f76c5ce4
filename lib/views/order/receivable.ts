import { loadOrder } from "@/lib/data/order/load-order";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/** What of an order can still be taken in, line by line. */
export const receivableView = (actor: Actor, number: string) =>
  answer(actor, "sensor.receive", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const customer = await tx.customer.findUniqueOrThrow({
      where: { id: order.customerId },
      select: { name: true },
    });
    return {
      number: order.number,
      customer: customer.name,
      isOpen: order.state === "accepted",
      state: order.state,
      /** The customer's rule set asks for lot and roll of each sensor. */
      asksForRolls: order.ruleSet === "audited-heat-treatment",
      lines: order.lines.map((line) => ({
        position: line.position,
        typeLetter: line.typeLetter,
        construction: line.construction,
        quantity: line.quantity,
        received: line.sensors.length,
        toCome: Math.max(0, line.quantity - line.sensors.length),
        serials: line.sensors.map(({ serial }) => serial),
      })),
    };
  });
