import { z } from "zod";

/** What an offer or an acknowledgment says, with every figure as it is printed. Its canonical text is stored and hashed. */

const Point = z.strictObject({
  /** In the customer's unit, as it was typed: "600 °F". */
  setpoint: z.string(),
  /** "± 4.00 °C", or what stands in its place. */
  tolerance: z.string(),
  /** "about 1.8 °C", or "not known". */
  expected: z.string(),
  scope: z.enum(["not-stated", "inside", "outside", "unusable"]),
  /** `no-question`: no class is asked for; offers of before say it also of a class without a rule, which is `no-rule`. */
  conformity: z.enum([
    "decidable",
    "not-decidable",
    "no-tolerance-defined",
    "no-question",
    "no-rule",
    "unknown",
  ]),
});

const Line = z.strictObject({
  position: z.int(),
  typeLetter: z.string(),
  quantity: z.int(),
  group: z.string(),
  description: z.string(),
  specification: z.string(),
  /** Where, by whom, how and what beside the points, a phrase each. */
  extras: z.array(z.string()),
  points: z.array(Point),
});

const PricedLine = z.strictObject({
  key: z.string(),
  per: z.string(),
  title: z.string(),
  position: z.int().nullable(),
  quantity: z.int(),
  unitAmount: z.int(),
  amount: z.int(),
});

export const OfferContent = z.strictObject({
  schema: z.literal(1),
  kind: z.enum(["quotation", "acknowledgment"]),
  number: z.string(),
  on: z.iso.date(),
  laboratory: z.strictObject({
    name: z.string(),
    addressLines: z.array(z.string()),
    contact: z.string(),
    accreditation: z.string(),
    isDemo: z.boolean(),
  }),
  customer: z.strictObject({
    name: z.string(),
    addressLines: z.array(z.string()),
    contactName: z.string(),
  }),
  order: z.strictObject({
    number: z.string(),
    purchaseOrder: z.string(),
    urgency: z.enum(["standard", "express"]),
  }),
  method: z.string(),
  rule: z.strictObject({ name: z.string(), plain: z.string(), agreement: z.string() }),
  lines: z.array(Line).min(1),
  /** What the customer has to know before agreeing: outside the scope, not decidable, U not known. */
  remarks: z.array(z.string()),
  price: z.strictObject({ currency: z.string(), lines: z.array(PricedLine), total: z.int() }).nullable(),
  /** Of an offer alone. */
  validUntil: z.iso.date().nullable(),
  delivery: z.string(),
  /** SHA-256 of what is ordered: differs once the order was changed. */
  termsHash: z.string().regex(/^[0-9a-f]{64}$/),
});
export type OfferContent = z.output<typeof OfferContent>;

/** As stored; a text nobody of ours could have written is a fault and said so by the parser. */
export const readOffer = (stored: string): OfferContent => OfferContent.parse(JSON.parse(stored));
