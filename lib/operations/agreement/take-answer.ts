import { insertAgreement, type OfferToAnswer, type Said } from "@/lib/data/agreement/agreement-store";
import { decideAgreement } from "@/lib/domain/agreement/decide-agreement";
import { agreementEvents } from "@/lib/domain/agreement/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { demand } from "@/lib/domain/refusal";
import type { OperationContext } from "../operation";

type Input = {
  readonly answer: "agreed" | "declined";
  readonly contentHash: string;
  readonly purchaseOrder: string;
  readonly remark: string;
};
type By = Pick<Said, "cameBy" | "saidByName" | "saidById">;

/** The same for link, portal and desk: judged, kept, told. */
export const takeAnswer = async (
  { tx, now }: OperationContext,
  offer: OfferToAnswer,
  input: Input,
  by: By,
) => {
  demand(decideAgreement(offer, input, isoDay(now)));
  const { answer, purchaseOrder, remark } = input;
  await insertAgreement(tx, offer, { answer, purchaseOrder, remark, ...by, saidAt: now });
  const event = eventOf(agreementEvents.recorded, offer.order.id, {
    orderNumber: offer.order.number,
    quotation: offer.number,
    answer,
    cameBy: by.cameBy,
    contentHash: offer.contentHash,
  });
  return {
    value: { orderNumber: offer.order.number, quotation: offer.number, answer },
    events: [event] as const,
  };
};
