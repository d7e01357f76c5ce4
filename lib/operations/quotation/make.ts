import { randomBytes } from "node:crypto";
import { insertAgreeLink } from "@/lib/data/agreement/link-store";
import { hex } from "@/lib/data/hex";
import { orderRecipients, type Recipient } from "@/lib/data/mail/recipients";
import { writeEach } from "@/lib/data/mail/write-each";
import { nextNumber } from "@/lib/data/number/next-number";
import { demandOrder } from "@/lib/data/order/demand-order";
import { loadOfferParts } from "@/lib/data/quotation/load-offer-parts";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { insertOrderDocument } from "@/lib/data/quotation/order-document-store";
import { insertQuotation } from "@/lib/data/quotation/quotation-store";
import { renderOffer } from "@/lib/documents/order/render-offer";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { quotationLetter } from "@/lib/domain/mail/letters/quotation";
import { composeOffer } from "@/lib/domain/quotation/compose-offer";
import { decideQuotation } from "@/lib/domain/quotation/decide-quotation";
import { quotationEvents } from "@/lib/domain/quotation/events";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { MakeQuotationInput } from "@/lib/domain/quotation/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation, type OperationContext } from "../operation";

type Offer = {
  readonly order: OfferedOrder;
  readonly quotationId: string;
  readonly number: string;
  readonly validUntil: string;
  readonly laboratory: string;
  readonly publicUrl: string;
};

/** The mail with the link: the token is in it and nowhere else; the link lives as long as the offer. */
const mailOffer = async (
  { tx, now }: OperationContext,
  offer: Offer,
  recipient: Recipient,
): Promise<string> => {
  const token = randomBytes(32).toString("base64url");
  const { order, quotationId, publicUrl } = offer;
  const expiresAt = new Date(Date.parse(`${offer.validUntil}T00:00:00Z`) + 86_400_000);
  const link = { token, order, quotationId, recipient: recipient.email, expiresAt, madeAt: now };
  await insertAgreeLink(tx, link);
  const compose = ({ name }: Recipient) =>
    quotationLetter({
      contactName: name,
      laboratory: offer.laboratory,
      orderNumber: order.number,
      quotationNumber: offer.number,
      validUntil: offer.validUntil,
      link: `${new URL(publicUrl).origin}/agree/${token}`,
    });
  await writeEach(tx, [recipient], "quotation", compose, publicUrl, now);
  return token;
};

/** A link of their own to each who is written to; the first answer counts. Answers the first link's token. */
const mailOffers = async (context: OperationContext, offer: Offer): Promise<string> => {
  const { customerId, number } = offer.order;
  const tokens: string[] = [];
  for (const recipient of await orderRecipients(context.tx, customerId, [number]))
    tokens.push(await mailOffer(context, offer, recipient));
  return tokens[0] ?? "";
};

/** An offer as it goes out: content, number, paper, link and mail in one transaction, or none of them. */
export const makeQuotation = defineOperation({
  name: "quotation/make",
  permission: "order.record",
  input: MakeQuotationInput,
  perform: async (context, input) => {
    const { actor, now, tx } = context;
    await demandOrder(tx, input.number);
    const order = (await loadOfferedOrder(tx, input.number)) as OfferedOrder;
    const parts = await loadOfferParts(tx, order, now);
    demand(decideQuotation(order, parts.price, input.validUntil, isoDay(now)));
    const year = now.getUTCFullYear();
    const number = `Q-${year}-${String(await nextNumber(tx, `quotation-${year}`)).padStart(4, "0")}`;
    const promised = order.promisedOn
      ? `Promised for ${order.promisedOn}.`
      : "The day is agreed once you order.";
    const content = composeOffer({
      ...parts,
      kind: "quotation",
      number,
      validUntil: input.validUntil,
      delivery: input.delivery || promised,
    });
    const made = { madeById: personIdOf(actor), madeAt: now };
    const { validUntil, publicUrl } = input;
    const { id, contentHash } = await insertQuotation(tx, { order, content, validUntil, ...made });
    const bytes = await renderOffer(content);
    await insertOrderDocument(tx, {
      order,
      kind: "quotation",
      number,
      content: canonical(content),
      bytes,
      ...made,
    });
    const { name: laboratory } = parts.laboratory;
    const token = await mailOffers(context, {
      ...{ order, number, validUntil, publicUrl, laboratory },
      quotationId: id,
    });
    const event = eventOf(quotationEvents.made, order.id, {
      number,
      orderNumber: order.number,
      contentHash: hex(contentHash),
      totalAmount: content.price?.total ?? 0,
      currency: parts.currency,
      validUntil,
    });
    return { value: { id, number, orderNumber: order.number, token }, events: [event] };
  },
});
