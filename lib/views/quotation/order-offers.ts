import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadCurrency, loadPrices } from "@/lib/data/price/price-store";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { listOrderDocuments } from "@/lib/data/quotation/order-document-store";
import { loadQuotations } from "@/lib/data/quotation/quotation-store";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { isoDay } from "@/lib/domain/calibration/due";
import { composePrice } from "@/lib/domain/price/compose-price";
import { formatMoney, groupedMoney } from "@/lib/domain/price/money";
import { chargedOrder, type OfferedOrder, termsText } from "@/lib/domain/quotation/offered-order";
import { paperTitles } from "@/lib/domain/quotation/point-words";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

const days = 30;
const inDays = (now: Date): string => isoDay(new Date(now.getTime() + days * 86_400_000));

type Standing = "agreed" | "declined" | "changed" | "replaced" | "over" | "open";

const offersOf = async (tx: Tx, order: OfferedOrder, today: string) => {
  const offers = await loadQuotations(tx, order.id);
  const answers = await tx.agreement.findMany({ where: { orderId: order.id } });
  const terms = sha256Hex(termsText(order));
  return offers.map(({ content, contentHash, madeAt, ...offer }, index) => {
    const said = answers.find(({ quotationId }) => quotationId === offer.id);
    const standing: Standing = said
      ? (said.answer as "agreed" | "declined")
      : index > 0
        ? "replaced"
        : content.termsHash !== terms
          ? "changed"
          : today > offer.validUntil
            ? "over"
            : "open";
    return {
      ...{ number: offer.number, validUntil: offer.validUntil, contentHash: hex(contentHash) },
      madeAt: madeAt.toISOString(),
      total: content.price ? formatMoney(content.price.total, content.price.currency) : "",
      standing,
      answer: said && {
        by: said.saidByName,
        at: said.saidAt.toISOString(),
        cameBy: said.cameBy,
        remark: said.remark,
        purchaseOrder: said.purchaseOrder,
      },
    };
  });
};

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
