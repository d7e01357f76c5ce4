import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadQuotations } from "@/lib/data/quotation/quotation-store";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { formatMoney } from "@/lib/domain/price/money";
import { type OfferedOrder, termsText } from "@/lib/domain/quotation/offered-order";

export type OfferStanding = "agreed" | "declined" | "changed" | "replaced" | "over" | "open";

/** The offers of an order, the newest first, each with how it stands and what was answered. */
export const offersOf = async (tx: Tx, order: OfferedOrder, today: string) => {
  const offers = await loadQuotations(tx, order.id);
  const answers = await tx.agreement.findMany({ where: { orderId: order.id } });
  const terms = sha256Hex(termsText(order));
  return offers.map(({ content, contentHash, madeAt, ...offer }, index) => {
    const said = answers.find(({ quotationId }) => quotationId === offer.id);
    const standing: OfferStanding = said
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
