import { z } from "zod";

/** What a delivery note says. Its canonical text is stored beside the paper. */
export const DeliveryNoteContent = z.strictObject({
  schema: z.literal(1),
  kind: z.literal("delivery-note"),
  number: z.string(),
  on: z.iso.date(),
  laboratory: z.strictObject({
    name: z.string(),
    addressLines: z.array(z.string()),
    contact: z.string(),
    isDemo: z.boolean(),
  }),
  customer: z.string(),
  address: z.array(z.string()),
  order: z.strictObject({ number: z.string(), purchaseOrder: z.string() }),
  handedOver: z.enum(["carrier", "in-person"]),
  carrier: z.string(),
  reference: z.string(),
  sensors: z.array(
    z.strictObject({
      tag: z.string(),
      serial: z.string(),
      typeLetter: z.string(),
      /** Numbers of its certificates; empty: it goes back without one. */
      certificates: z.array(z.string()),
    }),
  ),
  /** Why some go back without a certificate. */
  reason: z.string(),
  /** How many of the order are still to come. */
  remaining: z.int().min(0),
  /** How many of these are finished already; notes of before this was said have none. */
  finished: z.int().min(0).optional(),
  /** How many of these are not here: others are awaited in the place of what is not measured; left out: none. */
  awaited: z.int().min(1).optional(),
  /** How many more of these have never come; left out: none, or a note of before this was said. */
  missing: z.int().min(1).optional(),
});
export type DeliveryNoteContent = z.output<typeof DeliveryNoteContent>;
