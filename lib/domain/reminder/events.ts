import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { dueKinds, reminderStages } from "./types";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const reminderEvents = {
  told: defineEvent({
    action: "reminder.told",
    entityKind: "reminder",
    payload: z.strictObject({
      things: z
        .array(
          z.strictObject({
            title: z.string(),
            dueKind: z.enum(dueKinds),
            dueOn: z.iso.date(),
            stage: z.enum(reminderStages),
          }),
        )
        .min(1),
      messages: z.number().int().positive(),
    }),
    sentence: ({ things, messages }) =>
      `reminded ${messages === 1 ? "the quality manager" : `${messages} quality managers`} of ${things.map(({ title }) => title).join(", ")}`,
  }),
} as const;
