import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { isoDay } from "@/lib/domain/calibration/due";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";
import { offersOf } from "./offers-of";

/**
 * How the offer that counts stands, where whoever accepts the order or works on it has to know: before acceptance
 * always, after it where the customer declined since. null = there is nothing to know.
 */
export const offerStandingView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOfferedOrder(tx, number));
    if (order.state !== "recorded" && order.state !== "accepted") return null;
    const [offer] = await offersOf(tx, order, isoDay(now));
    if (!offer) return null;
    const isNews =
      offer.standing === "declined" &&
      (order.acceptedAt === null || (offer.answer?.at ?? "") > order.acceptedAt.toISOString());
    return order.state === "recorded" || isNews ? { ...offer, orderNumber: number, isNews } : null;
  });

export type OfferStandingPage = NonNullable<Awaited<ReturnType<typeof offerStandingView>>>;
