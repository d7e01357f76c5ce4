import type { Tx } from "@/lib/data/in-scope";
import { type OfferContent, readOffer } from "@/lib/domain/quotation/content";

/** The last offer that the customer agreed to for the work as it stands; null = none, or the order changed since. */
export const loadAgreedOffer = async (
  tx: Tx,
  orderId: string,
  termsHash: string,
): Promise<OfferContent | null> => {
  const agreed = await tx.agreement.findFirst({
    where: { orderId, answer: "agreed" },
    orderBy: { saidAt: "desc" },
    select: { quotationId: true },
  });
  const row =
    agreed &&
    (await tx.quotation.findUnique({ where: { id: agreed.quotationId }, select: { content: true } }));
  const content = row && readOffer(row.content);
  return content && content.termsHash === termsHash ? content : null;
};
