import { holdsOf } from "@/lib/data/hold/holds-of";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadReturnAddress } from "@/lib/data/order/return-address";
import { listDeliveryAddresses } from "@/lib/data/shipment/shipment-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

/** What of an order can be sent back now, to where, and what was sent before. */
export const orderShipmentsView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const customer = await tx.customer.findUniqueOrThrow({ where: { id: order.customerId } });
    const sensors = order.lines.flatMap((line) =>
      line.sensors.map((sensor) => ({ ...sensor, typeLetter: line.typeLetter })),
    );
    const holds = await holdsOf(
      tx,
      sensors.map(({ id }) => id),
    );
    const rows = await tx.shipment.findMany({
      where: { orderId: order.id },
      orderBy: { number: "desc" },
      include: { sensors: { select: { sensorId: true } } },
    });
    const returnTo = await loadReturnAddress(tx, order.id);
    return {
      number: order.number,
      customer: customer.name,
      ownAddress: customer.addressLines,
      returnTo,
      addresses: await listDeliveryAddresses(tx, order.customerId, returnTo.id),
      /** issued: with its certificate; received: without one, with a reason; the others cannot leave. */
      sensors: sensors.map(({ id, tag, serial, state, typeLetter }) => {
        const hold = holds.find(({ sensorId, isToBeReturned }) => sensorId === id && !isToBeReturned);
        return { tag, serial, state, typeLetter, hold: hold?.reason ?? "" };
      }),
      shipments: rows.map((row) => ({
        number: row.number,
        packedAt: row.packedAt.toISOString(),
        how: row.handedOver === "carrier" ? `${row.carrier} ${row.reference}`.trim() : "in person",
        sensors: row.sensors.length,
      })),
      mayShip: actor.kind === "staff" && may(actor.roles, "sensor.release"),
    };
  });

export type OrderShipments = Awaited<ReturnType<typeof orderShipmentsView>>;
