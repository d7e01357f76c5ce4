import { loadFurnaceLoad } from "@/lib/data/promise/furnace-load";
import { loadWaitingOrders } from "@/lib/data/promise/plan-store";
import { loadPromisePolicy } from "@/lib/data/promise/policy-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** Furnaces with the hours that are reserved or of a run and not over, and who waits for a day: for the board. */
export const furnaceQueueView = (actor: Actor, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const furnaces = await tx.furnace.findMany({
      orderBy: { tag: "asc" },
      select: { id: true, tag: true, name: true },
    });
    const { policy } = await loadPromisePolicy(tx);
    const { reserved, placed } = await loadFurnaceLoad(tx, now, now, policy);
    const bars = [
      ...reserved.map((slot) => ({
        ...{ furnaceId: slot.furnaceId, startsAt: slot.startsAt, endsAt: slot.endsAt, note: slot.note },
        ...{ order: slot.order ?? "", customer: slot.customer ?? "", promisedOn: slot.promisedOn ?? "" },
        isExpress: slot.urgency === "express",
      })),
      ...placed.map(({ work, hours }) => ({
        ...hours,
        note: `${work.kind === "run" ? "Run" : "Characterisation"} ${work.number}, ${
          work.isMeasuring ? "hot" : "planned"
        }${work.orders.length > 0 ? `, for ${work.orders.join(", ")}` : ""}`,
        ...{ order: "", customer: "", promisedOn: "", isExpress: false },
      })),
    ].toSorted((left, right) => left.startsAt - right.startsAt);
    return {
      now: now.toISOString(),
      furnaces: furnaces.map(({ id, tag, name }) => ({
        ...{ id, tag, name },
        slots: bars
          .filter(({ furnaceId }) => furnaceId === id)
          .map(({ furnaceId: _, ...bar }) => ({
            ...bar,
            startsAt: new Date(bar.startsAt).toISOString(),
            endsAt: new Date(bar.endsAt).toISOString(),
          })),
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
