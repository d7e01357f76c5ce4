import { hex } from "@/lib/data/hex";
import { listOrderDocuments } from "@/lib/data/quotation/order-document-store";
import { loadQuotations } from "@/lib/data/quotation/quotation-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { paperTitles } from "@/lib/domain/quotation/point-words";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

/** For the portal: the offers of one's own order, which of them waits for an answer, and the papers to download. */
export const portalOffersView = (actor: Actor, orderNumber: string, now: Date) =>
  answer(actor, "portal.read", async (tx) => {
    const order = found(
      await tx.order.findUnique({ where: { number: orderNumber }, select: { id: true, state: true } }),
    );
    const answers = await tx.agreement.findMany({ where: { orderId: order.id } });
    const isOpen = order.state === "recorded" || order.state === "accepted";
    const offers = (await loadQuotations(tx, order.id)).map(
      ({ id, content, contentHash, ...offer }, index) => {
        const said = answers.find(({ quotationId }) => quotationId === id);
        return {
          number: offer.number,
          validUntil: offer.validUntil,
          madeAt: offer.madeAt.toISOString(),
          content,
          contentHash: hex(contentHash),
          answer: said ? { answer: said.answer, by: said.saidByName, at: said.saidAt.toISOString() } : null,
          /** The last word on the order so far: there is no other offer. */
          isDeclined: isOpen && index === 0 && said?.answer === "declined",
          isWaiting: isOpen && index === 0 && !said && isoDay(now) <= offer.validUntil,
        };
      },
    );
    return {
      offers,
      mayAgree: actor.kind === "customer" && may(actor.roles, "portal.order"),
      /** GET /api/order-documents/{id} gives the PDF. */
      papers: (await listOrderDocuments(tx, order.id)).map(({ kind, madeAt, ...paper }) => ({
        ...paper,
        title: paperTitles[kind as keyof typeof paperTitles],
        madeAt: madeAt.toISOString(),
      })),
    };
  });

export type PortalOffers = Awaited<ReturnType<typeof portalOffersView>>;
