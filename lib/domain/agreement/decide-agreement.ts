import type { OrderState } from "../order/transitions";
import { ok, type Result, refuse } from "../refusal";

export type AnsweredOffer = {
  readonly orderState: OrderState;
  /** An answer is there already. */
  readonly isAnswered: boolean;
  /** A later offer was made for the same order. */
  readonly isNewest: boolean;
  readonly validUntil: string;
  readonly contentHash: string;
  /** Of what is ordered: as it was offered, and as it stands now. */
  readonly offeredTerms: string;
  readonly presentTerms: string;
};

/**
 * Whether this answer can be taken: to the offer that was on the screen, while it is open, and while the order is still
 * what it speaks of (ISO/IEC 17025:2017, 7.1.3 and 7.1.6). Nobody agrees to what they have not seen.
 */
export const decideAgreement = (
  offer: AnsweredOffer,
  shown: { readonly contentHash: string },
  today: string,
): Result<"take"> => {
  if (offer.isAnswered)
    return refuse("wrong-state", "This offer has its answer already. Nothing was changed.");
  if (offer.orderState !== "recorded" && offer.orderState !== "accepted")
    return refuse("wrong-state", `The order is ${offer.orderState}: nothing is agreed for it any more.`);
  if (!offer.isNewest)
    return refuse(
      "changed-meanwhile",
      "Another offer was made for this order since. Nothing was stored; please answer the newer one.",
    );
  if (today > offer.validUntil)
    return refuse(
      "wrong-state",
      `This offer was open until ${offer.validUntil}. Ask the laboratory for another.`,
    );
  if (shown.contentHash !== offer.contentHash)
    return refuse(
      "changed-meanwhile",
      "What was on the screen is not this offer. Nothing was stored; open the link again.",
    );
  if (offer.offeredTerms !== offer.presentTerms)
    return refuse(
      "changed-meanwhile",
      "The order was changed after this offer was made, so nothing was stored. The laboratory has to make a new offer.",
    );
  return ok("take");
};
