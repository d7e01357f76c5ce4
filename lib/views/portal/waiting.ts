import type { Tx } from "@/lib/data/in-scope";
import { loadOpenQuestions } from "@/lib/data/portal/open-questions";
import { isoDay } from "@/lib/domain/calibration/due";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** The newest offer of each open order, while nobody has answered it and its day is not over. */
const openOffers = async (tx: Tx, today: string) => {
  const orders = await tx.order.findMany({
    where: { state: { in: ["recorded", "accepted"] } },
    select: { id: true, number: true },
  });
  const offers = await tx.quotation.findMany({
    where: { orderId: { in: orders.map(({ id }) => id) } },
    select: { id: true, orderId: true, number: true, validUntil: true },
    orderBy: [{ madeAt: "desc" }, { number: "desc" }],
  });
  const newest = [...new Map(offers.toReversed().map((offer) => [offer.orderId, offer])).values()];
  const answered = await tx.agreement.findMany({
    where: { quotationId: { in: newest.map(({ id }) => id) } },
    select: { quotationId: true },
  });
  const closed = new Set(answered.map(({ quotationId }) => quotationId));
  return newest.flatMap(({ id, orderId, number, validUntil }) =>
    closed.has(id) || isoDay(validUntil) < today
      ? []
      : [
          {
            orderNumber: orders.find((order) => order.id === orderId)?.number ?? "",
            ...{ number, validUntil: isoDay(validUntil) },
          },
        ],
  );
};

/** What the laboratory waits for the customer with: questions and offers, over all orders. */
export const portalWaitingView = (actor: Actor, now: Date) =>
  answer(actor, "portal.read", async (tx) => ({
    questions: (await loadOpenQuestions(tx)).map(({ id, orderNumber, askedAt }) => ({
      ...{ id, orderNumber, askedOn: isoDay(askedAt) },
    })),
    offers: await openOffers(tx, isoDay(now)),
  }));

export type PortalWaiting = Awaited<ReturnType<typeof portalWaitingView>>;
