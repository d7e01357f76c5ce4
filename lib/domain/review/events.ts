import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const reviewEvents = {
  returned: defineEvent({
    action: "review.returned",
    entityKind: "run",
    payload: z.strictObject({ run: z.string(), evaluation: z.number().int(), reason: z.string() }),
    sentence: (p) => `returned run ${p.run} (evaluation ${p.evaluation}): ${p.reason}`,
  }),
  closed: defineEvent({
    action: "review.closed",
    entityKind: "run",
    payload: z.strictObject({
      run: z.string(),
      /** 0: every sensor left without one. */
      certificates: z.number().int().nonnegative(),
      /** Sensors without any result, put back to be calibrated again. */
      putBack: z.array(z.string()),
    }),
    sentence: (p) =>
      `closed the review of run ${p.run}, ${p.certificates} certificates signed off${p.putBack.length > 0 ? `; put back: ${p.putBack.join(", ")}` : ""}`,
  }),
  secondLookRecorded: defineEvent({
    action: "review.second-look-recorded",
    entityKind: "certificate",
    payload: z.strictObject({ number: z.string(), finding: z.string() }),
    sentence: (p) => `took the second look at certificate ${p.number}: ${p.finding}`,
  }),
  draftOpened: defineEvent({
    action: "review.draft-opened",
    entityKind: "run",
    payload: z.strictObject({ run: z.string(), sensor: z.string() }),
    sentence: (p) => `opened the draft certificate of ${p.sensor} in run ${p.run}`,
  }),
} as const;
