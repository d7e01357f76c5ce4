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
  sampleDrawn: defineEvent({
    action: "review.sample-drawn",
    entityKind: "run",
    payload: z.strictObject({
      run: z.string(),
      evaluation: z.number().int(),
      /** Hex: with it the lot can be drawn again. */
      seed: z.string().regex(/^[0-9a-f]{64}$/),
    }),
    sentence: (p) => `drew the lot of run ${p.run} (evaluation ${p.evaluation}): which results are looked at`,
  }),
  resultOpened: defineEvent({
    action: "review.result-opened",
    entityKind: "run",
    payload: z.strictObject({
      run: z.string(),
      evaluation: z.number().int(),
      sensor: z.string(),
      setpoint: z.string(),
    }),
    sentence: (p) => `opened ${p.sensor} at ${p.setpoint} in run ${p.run} (evaluation ${p.evaluation})`,
  }),
  commented: defineEvent({
    action: "review.commented",
    entityKind: "run",
    payload: z.strictObject({
      run: z.string(),
      evaluation: z.number().int(),
      /** Null: of the whole run. */
      sensor: z.string().nullable(),
      setpoint: z.string().nullable(),
      place: z.string(),
      comment: z.string(),
      text: z.string(),
    }),
    sentence: (p) =>
      `remarked on ${[p.sensor ?? `run ${p.run}`, p.setpoint ? `at ${p.setpoint}` : ""].filter(Boolean).join(" ")} (${p.place}): ${p.text}`,
  }),
  answered: defineEvent({
    action: "review.answered",
    entityKind: "run",
    payload: z.strictObject({
      run: z.string(),
      comment: z.string(),
      settles: z.boolean(),
      text: z.string(),
    }),
    sentence: (p) =>
      `answered remark ${p.comment} in run ${p.run}${p.settles ? " and settled it" : ""}: ${p.text}`,
  }),
} as const;
