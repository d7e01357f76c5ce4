import { findAgreeLink } from "@/lib/data/agreement/link-store";
import { hex } from "@/lib/data/hex";
import { inSnapshot } from "@/lib/data/in-scope";
import { loadOfferDocument } from "@/lib/data/quotation/order-document-store";
import { withinRate } from "@/lib/data/rate/within-rate";
import { isoDay } from "@/lib/domain/calibration/due";
import { type OfferContent, readOffer } from "@/lib/domain/quotation/content";

export type OfferByLink =
  | { readonly kind: "open"; readonly content: OfferContent; readonly contentHash: string }
  /** Unknown, used and over look the same. */
  | { readonly kind: "closed" }
  | { readonly kind: "too-many" };

/** Of those that open nothing, all together; of one link that does. A minute each. */
const limits = { unknown: 120, known: 60 } as const;

const loadByLink = (token: string, now: Date) =>
  inSnapshot({ kind: "laboratory" }, async (tx) => {
    const link = await findAgreeLink(tx, token, now);
    const row = link && (await tx.quotation.findUnique({ where: { id: link.quotationId } }));
    if (!link || !row || isoDay(now) > isoDay(row.validUntil)) return null;
    const isAnswered = (await tx.agreement.count({ where: { quotationId: row.id } })) > 0;
    return isAnswered ? null : { row, tokenHash: link.tokenHash };
  });

/**
 * The offer a link opens. Whoever asks has no actor: the link is all they show. How often links are tried is counted,
 * which is no fact about anything and the only thing a view writes.
 */
export const offerByLinkView = async (token: string, now: Date): Promise<OfferByLink> => {
  const found = await loadByLink(token, now);
  const key = found ? `agree:${found.tokenHash.slice(0, 32)}` : "agree:unknown";
  const rate = await withinRate(key, found ? limits.known : limits.unknown, 60, now);
  if (!rate.isWithin) return { kind: "too-many" };
  if (!found) return { kind: "closed" };
  return {
    kind: "open",
    content: readOffer(found.row.content),
    contentHash: hex(found.row.contentHash),
  };
};

/** Its paper; null where the link opens nothing. */
export const offerPaperByLinkView = async (token: string, now: Date) => {
  const offer = await offerByLinkView(token, now);
  if (offer.kind !== "open") return null;
  return inSnapshot({ kind: "laboratory" }, (tx) => loadOfferDocument(tx, offer.content.number));
};
