import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { formatMoney } from "../price/money";

/** Facts about offers that the audit log can hold; gathered in `domain/audit/events`. They are of the order. */
export const quotationEvents = {
  made: defineEvent({
    action: "quotation.made",
    entityKind: "order",
    payload: z.strictObject({
      number: z.string(),
      orderNumber: z.string(),
      contentHash: z.string().regex(/^[0-9a-f]{64}$/),
      totalAmount: z.int().min(0),
      currency: z.string(),
      validUntil: z.iso.date(),
    }),
    sentence: (p) =>
      `made offer ${p.number} for order ${p.orderNumber}: ${formatMoney(p.totalAmount, p.currency)}, open until ${p.validUntil}`,
  }),
} as const;
