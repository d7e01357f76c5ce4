import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about promised days that the audit log can hold; gathered in `domain/audit/events`. */
export const promiseEvents = {
  given: defineEvent({
    action: "promise.given",
    entityKind: "order",
    payload: z.strictObject({
      orderNumber: z.string(),
      promisedOn: z.iso.date(),
      /** What the furnaces allow; null = none could be reckoned. */
      proposedOn: z.iso.date().nullable(),
      furnaceHours: z.number().min(0),
      slots: z.int().min(0),
      /** Of a day other than the proposed one. */
      reason: z.string(),
    }),
    sentence: (p) =>
      `promised order ${p.orderNumber} for ${p.promisedOn}${p.reason ? `, instead of ${p.proposedOn ?? "no day that could be reckoned"}, because: ${p.reason}` : ""}; ${p.slots} furnace ${p.slots === 1 ? "load" : "loads"}, ${p.furnaceHours} h`,
  }),
  policyChanged: defineEvent({
    action: "promise.policy-changed",
    entityKind: "laboratory",
    payload: z.strictObject({ before: z.string(), after: z.string(), reason: z.string() }),
    sentence: (p) => `changed what promised days are reckoned with: ${p.reason}`,
  }),
} as const;
