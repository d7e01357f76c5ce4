import { z } from "zod";
import { amendmentKinds } from "../amendment/amendment";
import { defineEvent } from "../audit/define-event";
import { issueStepLabels, issueStepNames } from "./issue-step";

const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** Of an ending, beside what followed; absent in what was told before it was kept. */
const grounds = {
  decidedAt: z.iso.datetime().optional(),
  /** The reason itself may name people: its SHA-256. */
  reasonSha256: hash.optional(),
};

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const certificateEvents = {
  signedOff: defineEvent({
    action: "certificate.signed-off",
    entityKind: "certificate",
    payload: z.strictObject({
      number: z.string(),
      sensor: z.string(),
      run: z.string(),
      evaluation: z.number().int(),
      /** Over what the signatory saw: the content before number, date and signatory. */
      reviewedHash: hash,
      /** Over the content as signed. */
      contentHash: hash,
      /** True where the performer signed off by the laboratory's policy. */
      exception: z.boolean(),
    }),
    sentence: (p) =>
      `signed off certificate ${p.number} for ${p.sensor} of run ${p.run}${p.exception ? ", having measured it: a second look is owed" : ""}`,
  }),
  issued: defineEvent({
    action: "certificate.issued",
    entityKind: "certificate",
    payload: z.strictObject({
      number: z.string(),
      mediaType: z.string(),
      sha256: hash,
      bytes: z.number().int().positive(),
      renderer: z.string(),
      /** Of the same document before its seal; absent where it has none. */
      unsealedSha256: hash.optional(),
      sealFingerprint: hash.optional(),
      /** Of the DCC that stands beside it. */
      dccSha256: hash.optional(),
    }),
    sentence: (p) =>
      `${p.sealFingerprint === undefined ? "stored" : "sealed and stored"} the document of certificate ${p.number} (${p.bytes} bytes)`,
  }),
  attemptFailed: defineEvent({
    action: "certificate.attempt-failed",
    entityKind: "certificate",
    payload: z.strictObject({ number: z.string(), step: z.enum(issueStepNames) }),
    sentence: (p) =>
      `could not make the document of certificate ${p.number}: the step “${issueStepLabels[p.step].toLowerCase()}” failed, and is tried again`,
  }),
  /** Of what follows an earlier certificate; told of its customer by the earlier one's ending. */
  successorSigned: defineEvent({
    action: "certificate.successor-signed",
    entityKind: "certificate",
    payload: z.strictObject({
      number: z.string(),
      amends: z.string(),
      evaluation: z.number().int(),
      reviewedHash: hash,
      contentHash: hash,
      /** True where the performer signed off by the laboratory's policy. */
      exception: z.boolean(),
    }),
    sentence: (p) => `signed off certificate ${p.number}, which follows ${p.amends}`,
  }),
  amendmentAsked: defineEvent({
    action: "certificate.amendment-asked",
    entityKind: "certificate",
    payload: z.strictObject({
      number: z.string(),
      kind: z.enum(amendmentKinds),
      /** Which fields are to say something else. */
      fields: z.array(z.string()),
    }),
    sentence: (p) =>
      `asked for ${p.kind === "amendment" ? "an amendment" : "a replacement"} of certificate ${p.number}`,
  }),
  amendmentDropped: defineEvent({
    action: "certificate.amendment-dropped",
    entityKind: "certificate",
    payload: z.strictObject({ number: z.string(), kind: z.enum(amendmentKinds) }),
    sentence: (p) => `dropped what was asked for certificate ${p.number}: it stays as it is`,
  }),
  amended: defineEvent({
    action: "certificate.amended",
    entityKind: "certificate",
    payload: z.strictObject({ number: z.string(), successor: z.string(), ...grounds }),
    sentence: (p) => `amended certificate ${p.number} by ${p.successor}`,
  }),
  replaced: defineEvent({
    action: "certificate.replaced",
    entityKind: "certificate",
    payload: z.strictObject({ number: z.string(), successor: z.string(), ...grounds }),
    sentence: (p) => `replaced certificate ${p.number} by ${p.successor}`,
  }),
  withdrawn: defineEvent({
    action: "certificate.withdrawn",
    entityKind: "certificate",
    payload: z.strictObject({ number: z.string(), ...grounds }),
    sentence: (p) => `withdrew certificate ${p.number}`,
  }),
  downloaded: defineEvent({
    action: "certificate.downloaded",
    entityKind: "certificate",
    payload: z.strictObject({
      number: z.string(),
      sha256: hash,
      /** Where it was not the PDF. */
      mediaType: z.string().optional(),
      /** Of the DCC that was taken with the PDF. */
      dccSha256: hash.optional(),
    }),
    sentence: (p) =>
      `downloaded ${p.mediaType === "application/xml" ? "the DCC of certificate" : "certificate"} ${p.number}`,
  }),
} as const;
