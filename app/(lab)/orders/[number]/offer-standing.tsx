import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import { Timestamp } from "@/app/_ui/timestamp";
import type { OfferStandingPage } from "@/lib/views/quotation/offer-standing";

type Props = { readonly offer: OfferStandingPage | null };

const titleOf = ({ number, standing }: OfferStandingPage): string => {
  if (standing === "declined") return `The customer declined offer ${number}`;
  if (standing === "agreed") return `The customer agreed to offer ${number}`;
  if (standing === "changed") return `The order was changed since offer ${number}`;
  return standing === "over" ? `Offer ${number} was not answered` : `Offer ${number} is still open`;
};

const follows = ({ standing, validUntil }: OfferStandingPage): string => {
  switch (standing) {
    case "declined":
      return "Speak with them before any work is begun; then make another offer, amend or change the order, or cancel it.";
    case "agreed":
      return "It is agreed as it stands, and charged so.";
    case "changed":
      return "Nobody can agree to it any more. Accepting the order leaves it so, and the price list counts; where the price must be agreed first, make a new offer.";
    case "over":
      return `It was open until ${validUntil}. Accepting the order leaves it unanswered, and the price list counts; where the price must be agreed first, make a new offer.`;
    default:
      return `Accepting the order does not answer it: it stays open until ${validUntil}, the customer may still agree to it or decline it, and until they agree the price list counts. Where it must be agreed first, wait for the answer, or record what they said.`;
  }
};

/** What was offered and answered, where it changes what whoever reads the order does next. */
export function OfferStanding({ offer }: Props) {
  if (!offer || offer.standing === "replaced") return null;
  const { answer } = offer;
  return (
    <Notice kind={offer.standing === "agreed" ? "done" : "info"} title={titleOf(offer)}>
      {answer ? (
        <p>
          {answer.by}, <Timestamp at={answer.at} />
          {answer.remark === "" ? "." : `: ${answer.remark}`}
        </p>
      ) : null}
      <p>
        {follows(offer)} <Link href={`/orders/${offer.orderNumber}/quotation#offers`}>Offer and price</Link>
      </p>
    </Notice>
  );
}
