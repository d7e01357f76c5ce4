import type { Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { canonical } from "@/lib/domain/audit/canonical";
import { isoDay } from "@/lib/domain/calibration/due";
import { type OfferContent, readOffer } from "@/lib/domain/quotation/content";

type NewQuotation = {
  readonly order: { readonly id: string; readonly customerId: string; readonly version: number };
  readonly content: OfferContent;
  readonly validUntil: string;
  readonly madeById: string;
  readonly madeAt: Date;
};

/** The offer with the hash of its text; the answer names that hash. */
export const insertQuotation = async (tx: Tx, { order, content, validUntil, ...made }: NewQuotation) => {
  const text = canonical(content);
  const contentHash = sha256(new TextEncoder().encode(text));
  const { id } = await tx.quotation.create({
    data: {
      number: content.number,
      orderId: order.id,
      customerId: order.customerId,
      orderVersion: order.version,
      content: text,
      contentHash,
      totalAmount: content.price?.total ?? 0,
      currency: content.price?.currency ?? "GBP",
      validUntil: new Date(validUntil),
      ...made,
    },
    select: { id: true },
  });
  return { id, contentHash };
};

const told = { number: true, content: true, contentHash: true, validUntil: true, madeAt: true } as const;

/** The offers of an order, the newest first. */
export const loadQuotations = async (tx: Tx, orderId: string) => {
  const rows = await tx.quotation.findMany({
    where: { orderId },
    orderBy: [{ madeAt: "desc" }, { number: "desc" }],
    select: { id: true, ...told },
  });
  return rows.map((row) => ({
    ...row,
    content: readOffer(row.content),
    validUntil: isoDay(row.validUntil),
  }));
};
export type StoredQuotation = Awaited<ReturnType<typeof loadQuotations>>[number];

/** The number of the offer that counts: the last one made. null = none. */
export const newestQuotationId = async (tx: Tx, orderId: string): Promise<string | null> =>
  (
    await tx.quotation.findFirst({
      where: { orderId },
      orderBy: [{ madeAt: "desc" }, { number: "desc" }],
      select: { id: true },
    })
  )?.id ?? null;
