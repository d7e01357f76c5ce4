import { createHash } from "node:crypto";
import type { Tx } from "@/lib/data/in-scope";

/** What the database knows of a link: whoever reads the database cannot use it. */
export const linkHash = (token: string): string => createHash("sha256").update(token).digest("hex");

type NewLink = {
  readonly token: string;
  readonly order: { readonly id: string; readonly customerId: string };
  readonly quotationId: string;
  readonly recipient: string;
  readonly expiresAt: Date;
  readonly madeAt: Date;
};

export const insertAgreeLink = async (
  tx: Tx,
  { token, order, quotationId, ...link }: NewLink,
): Promise<void> => {
  await tx.customerLink.create({
    data: {
      ...link,
      tokenHash: linkHash(token),
      orderId: order.id,
      customerId: order.customerId,
      purpose: "agree",
      subjectId: quotationId,
    },
  });
};

/** Where a link to an offer leads while it is open; null = nowhere (unknown, over, of another purpose). */
export const findAgreeLink = async (
  tx: Tx,
  token: string,
  now: Date,
): Promise<{ readonly quotationId: string; readonly tokenHash: string } | null> => {
  const row = await tx.customerLink.findUnique({ where: { tokenHash: linkHash(token) } });
  return row && row.purpose === "agree" && row.expiresAt > now
    ? { quotationId: row.subjectId, tokenHash: row.tokenHash }
    : null;
};
