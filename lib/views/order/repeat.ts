import { loadSince } from "@/lib/data/order/load-since";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { changesSince } from "@/lib/domain/order/changes-since";
import { orderStateLabels } from "@/lib/domain/order/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/** What repeating an order would make, and what is not as it was. */
export const repeatOrderView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "order.record", async (tx) => {
    const order = found(await loadOfferedOrder(tx, number));
    const customer = await tx.customer.findUniqueOrThrow({
      where: { id: order.customerId },
      select: { name: true },
    });
    return {
      number: order.number,
      customer: customer.name,
      state: orderStateLabels[order.state].toLowerCase(),
      isRepeatable: order.state !== "requested",
      lines: order.lines.map((line) => ({
        position: line.position,
        text: `${line.quantity} × type ${line.typeLetter}, ${line.construction}`,
        setpoints: line.setpoints.map(({ typed }) => typed).join(", "),
        unit: line.temperatureUnit === "F" ? "°F" : "°C",
      })),
      changes: changesSince(await loadSince(tx, order, now)),
    };
  });
