import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const of = { run: z.string(), sensor: z.string() };

export const opinionEvents = {
  written: defineEvent({
    action: "opinion.written",
    entityKind: "run",
    payload: z.strictObject({ ...of, authorisationId: z.string() }),
    sentence: (p) => `wrote an opinion on ${p.sensor} of run ${p.run}`,
  }),
  takenBack: defineEvent({
    action: "opinion.taken-back",
    entityKind: "run",
    payload: z.strictObject({ ...of, reason: z.string() }),
    sentence: (p) => `took the opinion on ${p.sensor} of run ${p.run} back: ${p.reason}`,
  }),
} as const;
