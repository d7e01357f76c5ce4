import { loadOrder } from "@/lib/data/order/load-order";
import { proposeFor } from "@/lib/data/promise/propose";
import { isoDay } from "@/lib/domain/calibration/due";
import type { Order } from "@/lib/domain/order/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

/** Setpoints that the customer gave in °F, by the °C they are planned at. */
const typedFahrenheit = ({ lines }: Order): Readonly<Record<number, string>> =>
  Object.fromEntries(
    lines
      .filter(({ temperatureUnit }) => temperatureUnit === "F")
      .flatMap(({ setpoints }) => setpoints.map(({ celsius, typed }) => [celsius, `${typed} °F`])),
  );

const iso = (at: number): string => new Date(at).toISOString();

/** What was promised, and what the furnaces allow today. */
export const orderPromiseView = (actor: Actor, number: string, arrivesOn: string | null, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const row = await tx.order.findUniqueOrThrow({
      where: { id: order.id },
      select: { promisedOn: true, urgency: true },
    });
    const { policy, proposal, shown } = await proposeFor(tx, order, arrivesOn, now);
    const isOpen = order.state === "recorded" || order.state === "accepted";
    return {
      ...{ number: order.number, state: order.state, arrivesOn: arrivesOn ?? "", shown },
      isExpress: row.urgency === "express",
      promisedOn: row.promisedOn && isoDay(row.promisedOn),
      proposal:
        proposal.kind === "impossible"
          ? proposal
          : {
              ...proposal,
              slots: proposal.slots.map((slot) => ({
                ...slot,
                startsAt: iso(slot.startsAt),
                endsAt: iso(slot.endsAt),
              })),
            },
      fahrenheit: typedFahrenheit(order),
      policy,
      mayPromise: isOpen && actor.kind === "staff" && may(actor.roles, "order.accept"),
    };
  });

export type OrderPromise = Awaited<ReturnType<typeof orderPromiseView>>;
