import { z } from "zod";
import { optionalText } from "./field";

/** What was said about an order, in the order in which it was said (ISO/IEC 17025:2017, 7.1.8). */
export const noteKinds = ["note", "told-customer", "from-customer"] as const;
export type NoteKind = (typeof noteKinds)[number];
export const noteKindLabels: Readonly<Record<NoteKind, string>> = {
  note: "Note",
  "told-customer": "Told the customer",
  "from-customer": "From the customer",
};

export const OrderNoteInput = z.object({
  number: z.string(),
  kind: z.enum(noteKinds, "Choose what it is."),
  text: optionalText(2000).refine((text) => text.length >= 2, "Write what was said."),
  /** The portal shows it to the customer. */
  isForCustomer: z
    .union([z.boolean(), z.string()])
    .default(false)
    .transform((value) => value === true || (typeof value === "string" && value !== "")),
});
