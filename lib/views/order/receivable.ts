import { loadOrder } from "@/lib/data/order/load-order";
import { openRolls } from "@/lib/data/roll/open-rolls";
import { sensorsStillHere } from "@/lib/data/sensor/still-here";
import { countedSensors } from "@/lib/domain/order/counted-sensors";
import { stillHereAs } from "@/lib/domain/sensor/still-here";
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
    const known = await sensorsStillHere(tx, order);
    const types: readonly string[] = order.lines.map(({ typeLetter }) => typeLetter);
    return {
      number: order.number,
      customer: customer.name,
      isOpen: order.state === "accepted",
      state: order.state,
      /** The customer's rule set asks for lot and roll of each sensor. */
      asksForRolls: order.ruleSet === "audited-heat-treatment",
      /** Of which one end alone is here. */
      openRolls: await openRolls(tx, order),
      /** The customer's sensors of other orders, of a type of this one, that have not left the house. */
      stillHere: known.filter(({ typeLetter }) => types.includes(typeLetter)),
      /** Taken in for this order, and in the house under another label too. */
      twice: order.lines.flatMap(({ typeLetter, sensors }) =>
        sensors.flatMap(({ serial, tag, state }) => {
          const other = state === "collected" ? null : stillHereAs(known, { serial, typeLetter });
          return other === null ? [] : [{ serial, tag, other }];
        }),
      ),
      lines: order.lines.map((line) => ({
        position: line.position,
        typeLetter: line.typeLetter,
        construction: line.construction,
        quantity: line.quantity,
        received: countedSensors(line.sensors).length,
        toCome: Math.max(0, line.quantity - countedSensors(line.sensors).length),
        serials: line.sensors.map(({ serial }) => serial),
      })),
    };
  });
