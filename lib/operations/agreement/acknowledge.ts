import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { orderRecipients, type Recipient } from "@/lib/data/mail/recipients";
import { writeEach } from "@/lib/data/mail/write-each";
import { demandOrder } from "@/lib/data/order/demand-order";
import { loadAgreedOffer } from "@/lib/data/quotation/load-agreed-offer";
import { loadOfferParts } from "@/lib/data/quotation/load-offer-parts";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { insertOrderDocument } from "@/lib/data/quotation/order-document-store";
import { renderOffer } from "@/lib/documents/order/render-offer";
import { agreementEvents } from "@/lib/domain/agreement/events";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { acknowledgmentLetter } from "@/lib/domain/mail/letters/acknowledgment";
import { composeOffer } from "@/lib/domain/quotation/compose-offer";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/**
 * The acknowledgment of an accepted order as a paper, and a mail that says so. Pressed by the desk, as often as the
 * order changes: each is numbered after the order. Its price is the agreed one, or today's where none was agreed.
 */
export const acknowledgeOrder = defineOperation({
  name: "agreement/acknowledge",
  permission: "order.record",
  input: z.strictObject({ number: z.string().max(40), publicUrl: z.url({ protocol: /^https?$/ }) }),
  perform: async ({ actor, now, tx }, input) => {
    await demandOrder(tx, input.number);
    const order = (await loadOfferedOrder(tx, input.number)) as OfferedOrder;
    if (order.state !== "accepted" && order.state !== "completed")
      throw new Refused({
        code: "wrong-state",
        message: `This order is ${order.state}: only an accepted one is acknowledged. Nothing was sent.`,
      });
    const parts = await loadOfferParts(tx, order, now);
    const earlier = await tx.orderDocument.count({ where: { orderId: order.id, kind: "acknowledgment" } });
    const number = `${order.number}-A${earlier + 1}`;
    const composed = composeOffer({
      ...parts,
      kind: "acknowledgment",
      number,
      validUntil: null,
      delivery: order.promisedOn
        ? `Promised for ${order.promisedOn}, once the sensors are here.`
        : "No day is promised yet.",
    });
    const agreed = await loadAgreedOffer(tx, order.id, composed.termsHash);
    const content = agreed?.price ? { ...composed, price: agreed.price } : composed;
    const bytes = await renderOffer(content);
    const made = { madeById: personIdOf(actor), madeAt: now };
    const paper = {
      order,
      kind: "acknowledgment",
      number,
      content: canonical(content),
      bytes,
      ...made,
    } as const;
    const digest = await insertOrderDocument(tx, paper);
    const compose = ({ name }: Recipient) =>
      acknowledgmentLetter({
        contactName: name,
        laboratory: parts.laboratory.name,
        orderNumber: order.number,
        promisedOn: order.promisedOn,
        link: `${new URL(input.publicUrl).origin}/portal/orders/${order.number}`,
      });
    const recipients = await orderRecipients(tx, order.customerId, [order.number]);
    await writeEach(tx, recipients, "acknowledgment", compose, input.publicUrl, now);
    const payload = { number, orderNumber: order.number, sha256: hex(digest) };
    return {
      value: { number, orderNumber: order.number },
      events: [eventOf(agreementEvents.acknowledged, order.id, payload)],
    };
  },
});
