import { loadCurrency, loadPrices } from "@/lib/data/price/price-store";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { listOrderDocuments } from "@/lib/data/quotation/order-document-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { composePrice } from "@/lib/domain/price/compose-price";
import { groupedMoney } from "@/lib/domain/price/money";
import { chargedOrder } from "@/lib/domain/quotation/offered-order";
import { paperTitles } from "@/lib/domain/quotation/point-words";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";
import { offersOf } from "./offers-of";

const days = 30;
const inDays = (now: Date): string => isoDay(new Date(now.getTime() + days * 86_400_000));

/** What was offered for an order, what was answered, which papers left, and what it would cost today. */
export const orderOffersView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOfferedOrder(tx, number));
    const today = isoDay(now);
    const currency = await loadCurrency(tx);
    const price = composePrice(chargedOrder(order), await loadPrices(tx), today);
    const has = actor.kind === "staff" && may(actor.roles, "order.record");
    const isOpen = order.state === "recorded" || order.state === "accepted";
    return {
      number: order.number,
      state: order.state,
      currency,
      price: {
        missing: price.missing,
        total: price.total === null ? null : groupedMoney(price.total, currency),
        lines: price.lines.map(({ title, position, quantity, unitAmount, amount, key, per }) => ({
          ...{ key: `${key} ${per} ${position} ${title}`, title, position, quantity },
          unit: groupedMoney(unitAmount, currency),
          amount: groupedMoney(amount, currency),
        })),
      },
      offers: await offersOf(tx, order, today),
      papers: (await listOrderDocuments(tx, order.id)).map(({ kind, madeAt, ...paper }) => ({
        ...paper,
        title: paperTitles[kind as keyof typeof paperTitles],
        madeAt: madeAt.toISOString(),
      })),
      mayOffer: has && isOpen,
      mayAcknowledge: has && (order.state === "accepted" || order.state === "completed"),
      validUntil: inDays(now),
    };
  });

export type OrderOffers = Awaited<ReturnType<typeof orderOffersView>>;
