import { Notice } from "@/app/_ui/notice";
import { Timestamp } from "@/app/_ui/timestamp";
import type { PortalOffers } from "@/lib/views/agreement/portal-offers";

type Props = {
  readonly offers: PortalOffers;
  /** The number of the offer that was answered a moment ago. */
  readonly answered: string;
};

/** That an answer has come, and what follows. Declined, it stays to be read until there is another offer. */
export function AnsweredOffer({ offers, answered }: Props) {
  const offer = offers.offers.find(({ answer, isDeclined, number }) =>
    number === answered ? answer !== null : isDeclined,
  );
  if (!offer?.answer) return null;
  const { answer, by, at } = offer.answer;
  return (
    <Notice
      kind="done"
      title={
        answer === "agreed"
          ? `You agreed to our offer ${offer.number}`
          : `You declined our offer ${offer.number}`
      }
    >
      {by}, <Timestamp at={at} />.{" "}
      {answer === "agreed"
        ? "Your answer is kept with the offer."
        : "Your answer is kept with the offer, and our front desk sees it. Nothing is agreed by it; we get in touch with you."}
    </Notice>
  );
}
