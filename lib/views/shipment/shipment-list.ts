import { ordersToSend } from "@/lib/data/sql/orders-to-send";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

const shown = 100;

/** The parcels that left, the newest first, and the orders of which something could leave. */
export const shipmentListView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => {
    const rows = await tx.shipment.findMany({
      orderBy: [{ packedAt: "desc" }, { number: "desc" }],
      take: shown,
      include: { sensors: { select: { sensorId: true } } },
    });
    const orders = await tx.order.findMany({
      where: { id: { in: rows.map(({ orderId }) => orderId) } },
      select: { id: true, number: true, customer: { select: { name: true } } },
    });
    const papers = await tx.orderDocument.findMany({
      where: { kind: "delivery-note", number: { in: rows.map(({ number }) => number) } },
      select: { id: true, number: true },
    });
    return {
      ready: await ordersToSend(tx, shown),
      shipments: rows.map((row) => {
        const order = orders.find(({ id }) => id === row.orderId);
        return {
          number: row.number,
          order: order?.number ?? "",
          customer: order?.customer.name ?? "",
          packedAt: row.packedAt.toISOString(),
          how: row.handedOver === "carrier" ? `${row.carrier} ${row.reference}`.trim() : "in person",
          sensors: row.sensors.length,
          paperId: papers.find(({ number }) => number === row.number)?.id ?? "",
        };
      }),
    };
  });

export type ShipmentList = Awaited<ReturnType<typeof shipmentListView>>;
