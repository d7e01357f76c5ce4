import { isoDay } from "@/lib/domain/calibration/due";
import type { ProgressAside } from "@/lib/domain/order/progress";
import type { Tx } from "../in-scope";

type OfferStanding = Pick<ProgressAside, "offer">;

/** Of each order whose newest offer waits for the customer, or was declined: which of the two. One past its day waits no more. */
export const offerStandings = async (
  tx: Tx,
  orderIds: readonly string[],
  today: string,
): Promise<ReadonlyMap<string, OfferStanding>> => {
  const offers = await tx.quotation.findMany({
    where: { orderId: { in: [...orderIds] } },
    select: { id: true, orderId: true, validUntil: true },
    orderBy: [{ madeAt: "asc" }, { number: "asc" }],
  });
  const newest = [...new Map(offers.map((offer) => [offer.orderId, offer])).values()];
  const answers = await tx.agreement.findMany({
    where: { quotationId: { in: newest.map(({ id }) => id) } },
    select: { quotationId: true, answer: true },
  });
  const said = new Map(answers.map(({ quotationId, answer }) => [quotationId, answer]));
  return new Map(
    newest.flatMap(({ id, orderId, validUntil }): [string, OfferStanding][] => {
      if (said.get(id) === "declined") return [[orderId, { offer: "declined" }]];
      return said.has(id) || isoDay(validUntil) < today ? [] : [[orderId, { offer: "waiting" }]];
    }),
  );
};
