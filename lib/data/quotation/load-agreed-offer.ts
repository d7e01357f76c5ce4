import type { Tx } from "@/lib/data/in-scope";
import { type OfferContent, readOffer } from "@/lib/domain/quotation/content";

type Asked = { readonly id: string; readonly termsHash: string };

/** Of each order the last offer that the customer agreed to, where it is for the work as it stands. */
export const loadAgreedOffers = async (
  tx: Tx,
  orders: readonly Asked[],
): Promise<ReadonlyMap<string, OfferContent>> => {
  const agreed = await tx.agreement.findMany({
    where: { orderId: { in: orders.map(({ id }) => id) }, answer: "agreed" },
    orderBy: { saidAt: "desc" },
    distinct: ["orderId"],
    select: { orderId: true, quotationId: true },
  });
  const rows = await tx.quotation.findMany({
    where: { id: { in: agreed.map(({ quotationId }) => quotationId) } },
    select: { orderId: true, content: true },
  });
  const hashes = new Map(orders.map(({ id, termsHash }) => [id, termsHash]));
  return new Map(
    rows.flatMap(({ orderId, content }) => {
      const offer = readOffer(content);
      return offer && offer.termsHash === hashes.get(orderId) ? [[orderId, offer] as const] : [];
    }),
  );
};

/** The last offer that the customer agreed to for the work as it stands; null = none, or the order changed since. */
export const loadAgreedOffer = async (
  tx: Tx,
  orderId: string,
  termsHash: string,
): Promise<OfferContent | null> =>
  (await loadAgreedOffers(tx, [{ id: orderId, termsHash }])).get(orderId) ?? null;
