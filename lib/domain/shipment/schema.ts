import { z } from "zod";
import { optionalLine } from "../typed-text";

export const ShipInput = z
  .strictObject({
    /** Of the order. */
    number: z.string().max(40),
    tags: z
      .array(z.string().max(40))
      .min(1, "Choose at least one sensor.")
      .max(500, "At most 500 sensors in one parcel."),
    handedOver: z.enum(["carrier", "in-person"], "Say how they go back."),
    carrier: optionalLine(80),
    /** The carrier's own number. */
    reference: optionalLine(80),
    /** One of the customer's delivery addresses; empty: the customer's own. */
    addressId: z.union([z.literal("").transform(() => null), z.null(), z.uuid()]).default(null),
    /** Who takes them, in person. */
    toWhom: optionalLine(120),
    /** Asked for where a sensor leaves without a certificate. */
    reason: optionalLine(400),
    publicUrl: z.url({ protocol: /^https?$/ }),
  })
  .refine(({ handedOver, carrier }) => handedOver === "in-person" || carrier !== "", {
    path: ["carrier"],
    message: "Write which carrier takes them.",
  });
export type ShipInput = z.output<typeof ShipInput>;
