import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const furnaceEvents = {
  recorded: defineEvent({
    action: "furnace.recorded",
    entityKind: "furnace",
    payload: z.strictObject({ tag: z.string() }),
    sentence: ({ tag }) => `recorded furnace ${tag}`,
  }),
  changed: defineEvent({
    action: "furnace.changed",
    entityKind: "furnace",
    payload: z.strictObject({ tag: z.string(), changed: z.array(z.string()).min(1) }),
    sentence: ({ tag }) => `changed the record of furnace ${tag}`,
  }),
  configurationRecorded: defineEvent({
    action: "furnace.configuration-recorded",
    entityKind: "furnace",
    payload: z.strictObject({ tag: z.string(), configurationId: z.string(), name: z.string() }),
    sentence: ({ tag, name }) => `recorded the configuration ${name} of furnace ${tag}`,
  }),
  characterised: defineEvent({
    action: "furnace.characterised",
    entityKind: "furnace",
    payload: z.strictObject({
      tag: z.string(),
      configurationId: z.string(),
      name: z.string(),
      uniformityHalfWidthCelsius: z.number(),
      validUntil: z.iso.date(),
    }),
    sentence: ({ tag, name, uniformityHalfWidthCelsius, validUntil }) =>
      `recorded the characterisation of ${name} in furnace ${tag}: within ${uniformityHalfWidthCelsius} °C, valid until ${validUntil}`,
  }),
} as const;
