import { z } from "zod";
import { day, optionalLine } from "../typed-text";

export const MakeQuotationInput = z.strictObject({
  /** Of the order. */
  number: z.string().max(40),
  validUntil: day,
  /** Left empty: the promised day, or that none is promised yet. */
  delivery: optionalLine(200),
  /** Where the platform is reached: the link of the mail leads there. */
  publicUrl: z.url({ protocol: /^https?$/ }),
});
