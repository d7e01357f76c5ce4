import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { countingRuleLabels, countingRules } from "../order/options";

const text = z.string().min(1);

/** Facts of work in parts: a sensor annealed, measured once more, taken out of a review; a run abandoned. */
export const partsEvents = {
  annealed: defineEvent({
    action: "sensor.annealed",
    entityKind: "sensor",
    payload: z.strictObject({
      sensor: text,
      celsius: z.number(),
      hours: z.number(),
      manner: text,
      performedOn: text,
    }),
    sentence: (p) =>
      `annealed sensor ${p.sensor} on ${p.performedOn} at ${p.celsius} °C for ${p.hours} h: ${p.manner}`,
  }),
  repeatAuthorised: defineEvent({
    action: "run.repeat-authorised",
    entityKind: "run",
    payload: z.strictObject({
      run: text,
      earlierRun: text,
      sensor: text,
      countingRule: z.enum(countingRules),
      reason: text,
    }),
    sentence: (p) =>
      `authorised run ${p.run} to measure ${p.sensor} once more after run ${p.earlierRun}: ${p.reason} (${countingRuleLabels[p.countingRule].toLowerCase()})`,
  }),
  leftReview: defineEvent({
    action: "review.sensor-left",
    entityKind: "run",
    payload: z.strictObject({
      run: text,
      sensor: text,
      results: z.enum(["put-back", "kept"]),
      reason: text,
    }),
    sentence: (p) =>
      p.results === "kept"
        ? `kept the results of ${p.sensor} in run ${p.run} for its certificate, and let it go on: ${p.reason}`
        : `put ${p.sensor} back from run ${p.run}, without reporting its results: ${p.reason}`,
  }),
  abandoned: defineEvent({
    action: "run.abandoned",
    entityKind: "run",
    payload: z.strictObject({ run: text, sensors: z.array(z.string()), reason: text }),
    sentence: (p) => `abandoned run ${p.run} (${p.sensors.join(", ")}): ${p.reason}`,
  }),
} as const;
