import Link from "next/link";
import { Timestamp } from "@/app/_ui/timestamp";
import type { PortalOffers } from "@/lib/views/agreement/portal-offers";

type Props = { readonly number: string; readonly offers: PortalOffers };

const offerWords = (offer: PortalOffers["offers"][number]): string => {
  if (offer.answer)
    return offer.answer.answer === "agreed"
      ? `agreed by ${offer.answer.by}`
      : `declined by ${offer.answer.by}`;
  return offer.isWaiting ? `waits for you until ${offer.validUntil}` : "no longer open";
};

/** Offers with what was said to them, and every paper of the order. */
export function Papers({ number, offers }: Props) {
  if (offers.offers.length + offers.papers.length === 0) return <p>None yet.</p>;
  return (
    <ul className="plain-list">
      {offers.offers.map((offer) => (
        <li key={offer.number}>
          {offer.isWaiting ? (
            <Link href={`/portal/orders/${number}/offer`}>Offer {offer.number}</Link>
          ) : (
            <>Offer {offer.number}</>
          )}
          : {offerWords(offer)}
        </li>
      ))}
      {offers.papers.map((paper) => (
        <li key={paper.id}>
          <a href={`/api/order-documents/${paper.id}`}>
            Download {paper.title} {paper.number} (PDF)
          </a>
          , <Timestamp at={paper.madeAt} precision="day" />
        </li>
      ))}
    </ul>
  );
}
