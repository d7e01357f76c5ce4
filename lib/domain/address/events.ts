import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { addressKinds } from "./schema";

const kind = z.enum(addressKinds);
const words = { delivery: "a delivery address", invoice: "an invoice address", site: "a site" } as const;

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. Not where: a place may be a person's. */
export const addressEvents = {
  added: defineEvent({
    action: "address.added",
    entityKind: "address",
    payload: z.strictObject({ customerId: z.uuid(), kind }),
    sentence: (p) => `added ${words[p.kind]} of a customer`,
  }),
  changed: defineEvent({
    action: "address.changed",
    entityKind: "address",
    payload: z.strictObject({ customerId: z.uuid(), kind, changed: z.array(z.string()).min(1) }),
    sentence: (p) => `changed ${words[p.kind]} of a customer`,
  }),
  deactivated: defineEvent({
    action: "address.deactivated",
    entityKind: "address",
    payload: z.strictObject({ customerId: z.uuid(), kind }),
    sentence: (p) => `took ${words[p.kind]} of a customer out of use`,
  }),
  reactivated: defineEvent({
    action: "address.reactivated",
    entityKind: "address",
    payload: z.strictObject({ customerId: z.uuid(), kind }),
    sentence: (p) => `took ${words[p.kind]} of a customer into use again`,
  }),
} as const;
