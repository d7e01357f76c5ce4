import { loadWaitingOrders } from "@/lib/data/promise/plan-store";
import { isoDay } from "@/lib/domain/calibration/due";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** Furnaces with the hours that are taken and not over, and who waits for a day: for the board. */
export const furnaceQueueView = (actor: Actor, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const furnaces = await tx.furnace.findMany({
      orderBy: { tag: "asc" },
      select: { id: true, tag: true, name: true },
    });
    const slots = await tx.furnaceSlot.findMany({
      where: { isReleased: false, endsAt: { gt: now } },
      orderBy: [{ startsAt: "asc" }, { id: "asc" }],
    });
    const orders = await tx.order.findMany({
      where: { id: { in: slots.flatMap(({ orderId }) => orderId ?? []) } },
      select: {
        id: true,
        number: true,
        urgency: true,
        promisedOn: true,
        customer: { select: { name: true } },
      },
    });
    return {
      now: now.toISOString(),
      furnaces: furnaces.map(({ id, tag, name }) => ({
        ...{ id, tag, name },
        slots: slots
          .filter(({ furnaceId }) => furnaceId === id)
          .map((slot) => {
            const order = orders.find((one) => one.id === slot.orderId);
            return {
              startsAt: slot.startsAt.toISOString(),
              endsAt: slot.endsAt.toISOString(),
              note: slot.note,
              order: order?.number ?? "",
              customer: order?.customer.name ?? "",
              isExpress: order?.urgency === "express",
              promisedOn: order?.promisedOn ? isoDay(order.promisedOn) : "",
            };
          }),
      })),
      /** Accepted, and nothing promised yet. */
      waiting: (await loadWaitingOrders(tx)).map(({ number, urgency, groups }) => ({
        number,
        isExpress: urgency === "express",
        sensors: groups.reduce((sum, { sensors }) => sum + sensors, 0),
      })),
    };
  });

export type FurnaceQueue = Awaited<ReturnType<typeof furnaceQueueView>>;
