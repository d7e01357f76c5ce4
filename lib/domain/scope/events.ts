import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about the laboratory's scope that the audit log can hold; gathered in `domain/audit/events`. */
export const scopeEvents = {
  lineRecorded: defineEvent({
    action: "scope.line-recorded",
    entityKind: "scope-line",
    payload: z.strictObject({
      typeLetter: z.string(),
      fromCelsius: z.number(),
      toCelsius: z.number(),
      capability: z.string(),
      validFrom: z.iso.date(),
      source: z.string(),
    }),
    sentence: (p) =>
      `recorded the capability of type ${p.typeLetter} from ${p.fromCelsius} to ${p.toCelsius} °C, ${p.capability}, in force from ${p.validFrom}`,
  }),
  lineEnded: defineEvent({
    action: "scope.line-ended",
    entityKind: "scope-line",
    payload: z.strictObject({
      typeLetter: z.string(),
      fromCelsius: z.number(),
      toCelsius: z.number(),
      lastDay: z.iso.date(),
    }),
    sentence: (p) =>
      `ended the capability of type ${p.typeLetter} from ${p.fromCelsius} to ${p.toCelsius} °C with ${p.lastDay}`,
  }),
} as const;
