import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { formatMoney } from "../price/money";

/** Facts about what was handed to invoicing; gathered in `domain/audit/events`. */
export const invoicingEvents = {
  handedOver: defineEvent({
    action: "invoicing.handed-over",
    entityKind: "invoicing-file",
    payload: z.strictObject({
      number: z.string(),
      rows: z.int().positive(),
      orders: z.int().positive(),
      totalAmount: z.int().min(0),
      currency: z.string(),
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
    }),
    sentence: (p) =>
      `handed ${p.number} to invoicing: ${p.rows} rows of ${p.orders} ${p.orders === 1 ? "order" : "orders"}, ${formatMoney(p.totalAmount, p.currency)}`,
  }),
  downloaded: defineEvent({
    action: "invoicing.downloaded",
    entityKind: "invoicing-file",
    payload: z.strictObject({ number: z.string(), sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
    sentence: (p) => `downloaded ${p.number}`,
  }),
} as const;
