import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { activities, scopes } from "./authorisation";

/** Facts about who may sign and interpret. People by reference, never by name. */
export const authorisationEvents = {
  granted: defineEvent({
    action: "authorisation.granted",
    entityKind: "authorisation",
    payload: z.strictObject({
      personId: z.string(),
      activity: z.enum(activities),
      typeLetters: z.string(),
      fromCelsius: z.number(),
      toCelsius: z.number(),
      scope: z.enum(scopes),
      procedureId: z.string().nullable(),
      validFrom: z.string(),
      validUntil: z.string().nullable(),
    }),
    sentence: (p) =>
      `authorised a person to ${p.activity === "sign-off" ? "sign off results" : "state opinions"}, ${p.typeLetters === "" ? "every type" : `types ${p.typeLetters}`}, ${p.fromCelsius} °C to ${p.toCelsius} °C, from ${p.validFrom}${p.validUntil === null ? "" : ` to ${p.validUntil}`}`,
  }),
  withdrawn: defineEvent({
    action: "authorisation.withdrawn",
    entityKind: "authorisation",
    payload: z.strictObject({ personId: z.string(), activity: z.enum(activities) }),
    sentence: (p) =>
      `withdrew an authorisation to ${p.activity === "sign-off" ? "sign off results" : "state opinions"}`,
  }),
} as const;
