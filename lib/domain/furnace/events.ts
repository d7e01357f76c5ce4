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
  characterisationPlanned: defineEvent({
    action: "furnace.characterisation-planned",
    entityKind: "furnace",
    payload: z.strictObject({
      tag: z.string(),
      name: z.string(),
      run: z.string(),
      temperatures: z.array(z.number()),
    }),
    sentence: ({ tag, name, run, temperatures }) =>
      `planned the characterisation ${run} of ${name} in furnace ${tag} at ${temperatures.join(", ")} °C`,
  }),
  surveyRecorded: defineEvent({
    action: "furnace.survey-recorded",
    entityKind: "characterisation-run",
    payload: z.strictObject({
      run: z.string(),
      kind: z.string(),
      celsius: z.number(),
      rows: z.number(),
      /** Of the file, where one was uploaded. */
      sha256: z.string().nullable(),
    }),
    sentence: ({ run, kind, celsius, rows }) =>
      `recorded a survey of ${run}: ${kind} at ${celsius} °C, ${rows} rows`,
  }),
  characterisationSubmitted: defineEvent({
    action: "furnace.characterisation-submitted",
    entityKind: "characterisation",
    payload: z.strictObject({
      run: z.string(),
      tag: z.string(),
      name: z.string(),
      engineVersion: z.string(),
      validUntil: z.iso.date(),
      statement: z.string(),
    }),
    sentence: ({ run, tag, name, validUntil }) =>
      `submitted the characterisation ${run} of ${name} in furnace ${tag}, to hold until ${validUntil}`,
  }),
  characterisationAccepted: defineEvent({
    action: "furnace.characterisation-accepted",
    entityKind: "characterisation",
    payload: z.strictObject({ tag: z.string(), name: z.string(), performedOn: z.iso.date() }),
    sentence: ({ tag, name, performedOn }) =>
      `accepted the characterisation of ${performedOn} of ${name} in furnace ${tag}`,
  }),
  characterisationReturned: defineEvent({
    action: "furnace.characterisation-returned",
    entityKind: "characterisation",
    payload: z.strictObject({
      tag: z.string(),
      name: z.string(),
      performedOn: z.iso.date(),
      reason: z.string(),
    }),
    sentence: ({ tag, name, performedOn, reason }) =>
      `returned the characterisation of ${performedOn} of ${name} in furnace ${tag}: ${reason}`,
  }),
  inhomogeneityTested: defineEvent({
    action: "inhomogeneity.tested",
    entityKind: "inhomogeneity-test",
    payload: z.strictObject({
      tag: z.string(),
      celsius: z.number(),
      method: z.string(),
      relativeHalfWidth: z.number(),
      engineVersion: z.string(),
    }),
    sentence: ({ tag, celsius, relativeHalfWidth }) =>
      `tested the inhomogeneity of ${tag} at ${celsius} °C: ± ${(relativeHalfWidth * 100).toPrecision(2)} % of the emf`,
  }),
  inhomogeneityDecided: defineEvent({
    action: "inhomogeneity.decided",
    entityKind: "inhomogeneity-test",
    payload: z.strictObject({
      tag: z.string(),
      decision: z.enum(["accepted", "returned"]),
      reason: z.string(),
    }),
    sentence: ({ tag, decision, reason }) =>
      `${decision} the inhomogeneity test of ${tag}${reason === "" ? "" : `: ${reason}`}`,
  }),
} as const;
