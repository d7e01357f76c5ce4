import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { newestQuotationId } from "@/lib/data/quotation/quotation-store";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { lockOrder } from "@/lib/data/sql/lock-order";
import type { AnsweredOffer } from "@/lib/domain/agreement/decide-agreement";
import { isoDay } from "@/lib/domain/calibration/due";
import { readOffer } from "@/lib/domain/quotation/content";
import { type OfferedOrder, termsText } from "@/lib/domain/quotation/offered-order";

export type OfferToAnswer = AnsweredOffer & {
  readonly quotationId: string;
  readonly number: string;
  readonly order: OfferedOrder;
};

/** The offer with its order as it stands, the order locked; null = there is none. */
export const loadOfferToAnswer = async (
  tx: Tx,
  where: { readonly id: string } | { readonly number: string },
): Promise<OfferToAnswer | null> => {
  const found = await tx.quotation.findUnique({
    where: where as { id: string },
    select: { id: true, orderId: true },
  });
  const at = found && (await tx.order.findUnique({ where: { id: found.orderId }, select: { number: true } }));
  if (!found || !at) return null;
  await lockOrder(tx, at.number);
  const row = await tx.quotation.findUniqueOrThrow({ where: { id: found.id } });
  const order = await loadOfferedOrder(tx, at.number);
  if (!order) return null;
  return {
    quotationId: row.id,
    number: row.number,
    order,
    orderState: order.state,
    isAnswered: (await tx.agreement.count({ where: { quotationId: row.id } })) > 0,
    isNewest: (await newestQuotationId(tx, order.id)) === row.id,
    validUntil: isoDay(row.validUntil),
    contentHash: hex(row.contentHash),
    offeredTerms: readOffer(row.content).termsHash,
    presentTerms: sha256Hex(termsText(order)),
  };
};

export type Said = {
  readonly answer: "agreed" | "declined";
  readonly purchaseOrder: string;
  readonly remark: string;
  readonly cameBy: "link" | "portal" | "desk";
  readonly saidByName: string;
  readonly saidById: string | null;
  readonly saidAt: Date;
};

/** What was said, and with an agreement what it settles on the order: who agreed to the rule, and their order number. */
export const insertAgreement = async (tx: Tx, offer: OfferToAnswer, said: Said): Promise<void> => {
  const { order } = offer;
  await tx.agreement.create({
    data: {
      ...said,
      quotationId: offer.quotationId,
      orderId: order.id,
      customerId: order.customerId,
      contentHash: Buffer.from(offer.contentHash, "hex"),
    },
  });
  if (said.answer !== "agreed") return;
  await tx.order.update({
    where: { id: order.id },
    data: {
      ...(order.decisionRule === "none"
        ? {}
        : { decisionRuleAgreedBy: said.saidByName, decisionRuleAgreedOn: new Date(isoDay(said.saidAt)) }),
      ...(order.purchaseOrder || said.purchaseOrder === "" ? {} : { purchaseOrder: said.purchaseOrder }),
      version: { increment: 1 },
    },
  });
};
