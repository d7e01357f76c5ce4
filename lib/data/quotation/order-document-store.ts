import type { Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";

export type PaperKind = "quotation" | "acknowledgment" | "delivery-note";

type Paper = {
  readonly order: { readonly id: string; readonly customerId: string };
  readonly kind: PaperKind;
  readonly number: string;
  /** Canonical JSON text the bytes were made from. */
  readonly content: string;
  readonly bytes: Uint8Array;
  readonly madeById: string | null;
  readonly madeAt: Date;
};

/** A paper as it left. */
export const insertOrderDocument = async (tx: Tx, { order, bytes, ...paper }: Paper) => {
  const digest = sha256(bytes);
  await tx.orderDocument.create({
    data: {
      ...paper,
      orderId: order.id,
      customerId: order.customerId,
      mediaType: "application/pdf",
      bytes: Uint8Array.from(bytes),
      sha256: digest,
    },
  });
  return digest;
};

/** By its id; row-level security hides what is another customer's. */
export const loadOrderDocument = (tx: Tx, id: string) =>
  tx.orderDocument.findUnique({ where: { id }, select: { number: true, kind: true, bytes: true } });

export const loadOfferDocument = (tx: Tx, number: string) =>
  tx.orderDocument.findUnique({
    where: { kind_number: { kind: "quotation", number } },
    select: { number: true, kind: true, bytes: true },
  });

/** What there is for an order, the newest first. */
export const listOrderDocuments = (tx: Tx, orderId: string) =>
  tx.orderDocument.findMany({
    where: { orderId },
    orderBy: [{ madeAt: "desc" }, { number: "desc" }],
    select: { id: true, kind: true, number: true, madeAt: true },
  });
