import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const customerEvents = {
  recorded: defineEvent({
    action: "customer.recorded",
    entityKind: "customer",
    payload: z.strictObject({ name: z.string() }),
    sentence: ({ name }) => `recorded the customer ${name}`,
  }),
  changed: defineEvent({
    action: "customer.changed",
    entityKind: "customer",
    payload: z.strictObject({ name: z.string(), changed: z.array(z.string()).min(1) }),
    sentence: ({ name }) => `changed the record of the customer ${name}`,
  }),
} as const;
