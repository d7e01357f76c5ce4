import { z } from "zod";
import { day, optionalLine } from "../typed-text";

export const GivePromiseInput = z.strictObject({
  /** Of the order. */
  number: z.string().max(40),
  /** The day the sensors are expected; empty: they are here, or come tomorrow. */
  arrivesOn: z.union([z.literal("").transform(() => null), z.null(), day]).default(null),
  promisedOn: day,
  reason: optionalLine(400),
  /** What was proposed on the screen, by its hash: two who take the same hours do not both get them. */
  shown: z.string().regex(/^[0-9a-f]{64}$/, "The page has lost its proposal. Reload it."),
});
