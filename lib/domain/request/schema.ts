import { z } from "zod";
import { optionalLine, requiredLine, lines as severalLines } from "../typed-text";

/** As typed; the order's own schema judges the rest, so that a request is refused for what the desk would be refused for. */
const RequestedKind = z
  .strictObject({
    typeLetter: z.string().max(2),
    construction: requiredLine("Describe the sensor: sheath, diameter, length, how it ends.", 300),
    protection: z.string().max(40),
    quantity: z.string().max(10),
    temperatureUnit: z.string().max(2),
    /** Empty: the laboratory proposes them from the range of use. */
    setpoints: z.string().max(600).default(""),
    useFrom: z.string().max(20).default(""),
    useTo: z.string().max(20).default(""),
    tolerance: z.string().max(20),
    ownLimit: z.string().max(20).default(""),
    groupName: optionalLine(80),
  })
  .refine((kind) => kind.setpoints.trim() !== "" || kind.useFrom.trim() !== "", {
    path: ["setpoints"],
    message:
      "Write the temperatures; or leave them empty and write the range you use the sensors in, and we propose them.",
  });
export type RequestedKind = z.input<typeof RequestedKind>;

export const PortalRequestInput = z.strictObject({
  purchaseOrder: optionalLine(80),
  urgency: z.enum(["standard", "express"]).default("standard"),
  /** Empty: the address on record. */
  deliveryAddressId: z.union([z.literal(""), z.uuid("Choose an address from the list.")]).default(""),
  wishes: severalLines(1800).default(""),
  kinds: z
    .array(RequestedKind)
    .min(1, "Say what is to be calibrated.")
    .max(50, "At most 50 kinds of sensor in one request."),
});
