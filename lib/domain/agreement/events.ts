import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const ways = { link: "by the link of the mail", portal: "in the portal", desk: "to the desk" } as const;

/** Facts about what a customer agreed to; gathered in `domain/audit/events`. Who said it stands in the record alone. */
export const agreementEvents = {
  recorded: defineEvent({
    action: "agreement.recorded",
    entityKind: "order",
    payload: z.strictObject({
      orderNumber: z.string(),
      quotation: z.string(),
      answer: z.enum(["agreed", "declined"]),
      cameBy: z.enum(["link", "portal", "desk"]),
      contentHash: hash,
    }),
    sentence: (p) =>
      `${p.answer === "agreed" ? "recorded agreement to" : "recorded that the customer declined"} offer ${p.quotation} of order ${p.orderNumber}, said ${ways[p.cameBy]}`,
  }),
  acknowledged: defineEvent({
    action: "order.acknowledged",
    entityKind: "order",
    payload: z.strictObject({ number: z.string(), orderNumber: z.string(), sha256: hash }),
    sentence: (p) => `sent acknowledgment ${p.number} of order ${p.orderNumber}`,
  }),
} as const;
