import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { holdKindLabels, holdKinds, holdOutcomeLabels, holdOutcomes } from "./labels";

/** `tag` is empty where the whole order stands still. */
const subject = { orderNumber: z.string().min(1), tag: z.string() };

export const subjectWords = ({ orderNumber, tag }: { readonly orderNumber: string; readonly tag: string }) =>
  tag === "" ? `order ${orderNumber}` : `sensor ${tag} of order ${orderNumber}`;

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const holdEvents = {
  placed: defineEvent({
    action: "hold.placed",
    entityKind: "hold",
    payload: z.strictObject({ ...subject, kind: z.enum(holdKinds), reason: z.string().min(1) }),
    sentence: (p) => `put ${subjectWords(p)} on hold (${holdKindLabels[p.kind].toLowerCase()}): ${p.reason}`,
  }),
  released: defineEvent({
    action: "hold.released",
    entityKind: "hold",
    payload: z.strictObject({
      ...subject,
      outcome: z.enum(holdOutcomes),
      reason: z.string().min(1),
      disclaimer: z.string(),
      /** Said where another sensor is awaited in its place. */
      awaitsAnother: z.literal(true).optional(),
    }),
    sentence: (p) =>
      `ended the hold of ${subjectWords(p)} (${holdOutcomeLabels[p.outcome].toLowerCase()}): ${p.reason}${
        p.disclaimer === "" ? "" : `; the certificate says: ${p.disclaimer}`
      }${p.awaitsAnother ? "; another sensor is awaited in its place" : ""}`,
  }),
} as const;
