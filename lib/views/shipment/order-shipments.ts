import { withStandings } from "@/lib/data/certificate/with-standings";
import { awayOf } from "@/lib/data/custody/away-of";
import { handBacksOf } from "@/lib/data/hold/hand-backs-of";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadReturnAddress } from "@/lib/data/order/return-address";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { listDeliveryAddresses } from "@/lib/data/shipment/shipment-store";
import { noneStands } from "@/lib/domain/certificate/none-stands";
import { awayWords } from "@/lib/domain/custody/decide-in-house";
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
    const ids = sensors.map(({ id }) => id);
    const holds = await holdsOf(tx, ids);
    const away = await awayOf(tx, ids);
    const certificates = await withStandings(tx, await certificatesOfSensors(tx, ids));
    const handBacks = await handBacksOf(tx, order);
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
        const own = holds.filter(({ sensorId }) => sensorId === id);
        const handBack = handBacks.get(id) ?? null;
        const hold = own.find(({ isToBeReturned }) => !isToBeReturned);
        return {
          ...{ tag, serial, state, typeLetter, handBack },
          /** Finished, and none of its certificates stands. */
          isWithdrawn:
            state === "issued" && noneStands(certificates.filter(({ sensorId }) => sensorId === id)),
          /** "with …": it is not in the house; "" where it is. */
          away: away.has(id) ? awayWords(away.get(id) ?? "") : "",
          /** Why it stays here; "" where it may go. */
          hold: handBack === null ? (hold?.reason ?? "") : "",
          /** Why it goes back unmeasured. */
          why:
            handBack === "cancelled"
              ? "the order was cancelled"
              : handBack === "unmeasured"
                ? (own[0]?.reason ?? "")
                : "",
        };
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
