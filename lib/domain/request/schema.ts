import { z } from "zod";
import { ruleSets } from "../order/rule-set";
import { optionalLine, requiredLine, seenWhole, lines as severalLines } from "../typed-text";

const typed = (most: number) => z.string().max(most).superRefine(seenWhole);

/** As typed; the order's own schema judges the rest, so that a request is refused for what the desk would be refused for. */
const RequestedKind = z
  .strictObject({
    typeLetter: typed(2),
    construction: requiredLine("Describe the sensor: sheath, diameter, length, how it ends.", 300),
    protection: typed(40),
    quantity: typed(10),
    temperatureUnit: typed(2),
    /** Empty: the laboratory proposes them from the range of use. */
    setpoints: typed(600).default(""),
    useFrom: typed(20).default(""),
    useTo: typed(20).default(""),
    tolerance: typed(20),
    ownLimit: typed(20).default(""),
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
  /** What they are audited by; left out: nothing is said of it, and what a repeated order agreed stands. */
  ruleSet: z.enum(ruleSets, "Choose a rule set, or none.").optional(),
  /** The number of an own order that is to be done once more; empty: new work. */
  repeats: typed(40).default(""),
  wishes: severalLines(1800).default(""),
  kinds: z
    .array(RequestedKind)
    .min(1, "Say what is to be calibrated.")
    .max(50, "At most 50 kinds of sensor in one request."),
});
