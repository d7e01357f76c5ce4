import { z } from "zod";
import { Checkpoint } from "../audit/checkpoint";
import { DocumentLanguage, FurtherLanguage } from "./document-language";

const text = z.string().min(1);
const hash = z.string().regex(/^[0-9a-f]{64}$/);

const rollFigures = z.strictObject({ firstEnd: text, secondEnd: text, average: text, halfRange: text });

/** Of each roll of which both ends stand on the certificate: the errors of its ends, their average, the spread. */
export const CertificateRolls = z.strictObject({
  of: z
    .array(
      z.strictObject({
        roll: text,
        /** Labels of the pieces cut from each end. */
        firstEnd: z.array(text).min(1),
        secondEnd: z.array(text).min(1),
        rows: z
          .array(
            z.strictObject({
              setpoint: text,
              celsius: rollFigures,
              /** The same in °F, where it was ordered in °F: rounded once from the unrounded figures. */
              fahrenheit: rollFigures.optional(),
            }),
          )
          .min(1),
      }),
    )
    .min(1),
  statement: text,
});

/**
 * What a content may carry beyond what every certificate said before it could. All optional: a content without them
 * stays valid, and its bytes and hash stay as they were.
 */
export const furtherContent = {
  /** 7.8.1.3: left out is "full". */
  form: z.enum(["full", "simplified"]).optional(),
  /** Why it is simplified: by whom and when it was agreed. Stands wherever `form` is "simplified". */
  formStatement: text.optional(),
  /** Where its sentences come from. Left out: sentences written before there was a catalogue, English alone. */
  catalogue: z
    .strictObject({
      version: text,
      sha256: hash,
      /** The leading language first: it decides the decimal sign, and is the one that binds. */
      languages: z.array(DocumentLanguage).min(1),
    })
    .optional(),
  /** Per further language: each English sentence as it stands in this content, with its translation. */
  translations: z
    .array(z.strictObject({ language: FurtherLanguage, texts: z.record(text, text) }))
    .min(1)
    .optional(),
  rolls: CertificateRolls.optional(),
  /** What heat each item has seen: as told at intake, and here. */
  thermalHistory: z.array(text).min(1).optional(),
  /** n: readings and measurements set aside, and rules of the gate set aside, with their reasons. */
  exclusions: z.array(text).min(1).optional(),
  /** 7.8.7: marked as opinions; given only by who is authorised for them. */
  opinions: z
    .array(z.strictObject({ text, basis: text, by: text, on: text }))
    .min(1)
    .optional(),
  /** 7.8.8: which earlier certificate this one changes or takes the place of, by number and content hash, and why. */
  amends: z
    .strictObject({
      kind: z.enum(["amendment", "replacement"]),
      number: text,
      contentHash: hash,
      reason: text,
      /** 7.8.8.1: what an amendment says otherwise; empty: nothing was, or is, said there. */
      changes: z
        .array(z.strictObject({ what: text, was: z.string(), now: z.string() }))
        .min(1)
        .optional(),
    })
    .optional(),
  /** PUBLIC_URL/authenticity/TOKEN; the content hash is added after "#" where it is printed, never here. */
  authenticity: z.strictObject({ address: z.url() }).optional(),
  /** The laboratory's audit log at the signature: its last event then, and that event's hash. */
  log: Checkpoint.optional(),
};
