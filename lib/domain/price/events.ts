import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { formatMoney } from "./money";

/** Facts about the list of prices that the audit log can hold; gathered in `domain/audit/events`. */
export const priceEvents = {
  recorded: defineEvent({
    action: "price.recorded",
    entityKind: "price",
    payload: z.strictObject({
      key: z.string().min(1),
      title: z.string().min(1),
      per: z.string().min(1),
      typeLetter: z.string().nullable(),
      amount: z.int().min(0),
      currency: z.string(),
      validFrom: z.iso.date(),
      /** The last day of the price it replaces, where it replaces one. */
      endsEarlierWith: z.iso.date().optional(),
    }),
    sentence: (p) =>
      `recorded the price “${p.title}”${p.typeLetter ? `, type ${p.typeLetter}` : ""}: ${formatMoney(p.amount, p.currency)} per ${p.per} from ${p.validFrom}`,
  }),
  ended: defineEvent({
    action: "price.ended",
    entityKind: "price",
    payload: z.strictObject({ title: z.string(), lastDay: z.iso.date() }),
    sentence: (p) => `ended the price “${p.title}” with ${p.lastDay}`,
  }),
  currencySet: defineEvent({
    action: "price.currency-set",
    entityKind: "laboratory",
    payload: z.strictObject({ currency: z.string(), before: z.string() }),
    sentence: (p) => `set the currency of prices from ${p.before} to ${p.currency}`,
  }),
} as const;
