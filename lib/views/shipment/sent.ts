import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** What one parcel of an order took away; null = none of this number is of it. */
export const sentView = (actor: Actor, orderNumber: string, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const row = await tx.shipment.findUnique({
      where: { number },
      include: { sensors: { select: { sensorId: true } } },
    });
    const order =
      row && (await tx.order.findUnique({ where: { id: row.orderId }, select: { number: true } }));
    if (!row || order?.number !== orderNumber) return null;
    const sensors = await tx.sensor.findMany({
      where: { id: { in: row.sensors.map(({ sensorId }) => sensorId) } },
      orderBy: { tag: "asc" },
      select: { serial: true },
    });
    return {
      number,
      serials: sensors.map(({ serial }) => serial),
      how:
        row.handedOver === "carrier"
          ? `with ${row.carrier}${row.reference ? `, ${row.reference}` : ""}`
          : "handed over in person",
      address: row.address.replaceAll("\n", ", "),
      /** Finished, and still here. */
      finished: await tx.sensor.count({ where: { state: "issued", line: { orderId: row.orderId } } }),
    };
  });

export type Sent = NonNullable<Awaited<ReturnType<typeof sentView>>>;
