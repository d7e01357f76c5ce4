import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const recallEvents = {
  intervalSet: defineEvent({
    action: "recall.interval-set",
    entityKind: "customer",
    payload: z.strictObject({
      serial: z.string(),
      months: z.int().positive().nullable(),
      noticeDays: z.int().min(0),
    }),
    sentence: ({ serial, months }) =>
      `${months === null ? "wants no reminder" : `set an interval of ${months} months`} for ${serial === "" ? "all sensors of the customer" : `sensor ${serial}`}`,
  }),
  told: defineEvent({
    action: "recall.told",
    entityKind: "customer",
    payload: z.strictObject({ sensors: z.int().positive(), messages: z.int().min(0) }),
    sentence: ({ sensors }) =>
      `reminded a customer that ${sensors} ${sensors === 1 ? "sensor comes" : "sensors come"} due by the interval they set`,
  }),
} as const;
