import { z } from "zod";
import { seenWhole } from "../typed-text";

const wholeWithin = (least: number, most: number, message: string) =>
  z
    .string()
    .trim()
    .regex(/^\d{1,4}$/, message)
    .transform(Number)
    .pipe(z.int(message).min(least, message).max(most, message));

const monthsMessage = "Write whole months, from 1 to 120; or leave it empty for no reminder.";
const noticeMessage = "Write whole days, from 0 to 365.";

/** How often the customer wants a sensor calibrated. It is theirs to say; no certificate prints it (ISO/IEC 17025, 7.8.4.3). */
export const RecallInput = z.strictObject({
  /** Empty: for every sensor that has none of its own. */
  serial: z.string().trim().max(80, "At most 80 characters.").superRefine(seenWhole).default(""),
  /** Empty: not wanted. */
  months: z.union([z.literal("").transform(() => null), wholeWithin(1, 120, monthsMessage)], monthsMessage),
  noticeDays: wholeWithin(0, 365, noticeMessage).default(30),
});
