import { z } from "zod";

/**
 * The laboratory's published keys: what a sealed document is held against by whoever checks it. Certificates only; the
 * private parts lie in files outside the database.
 */

const Moment = z.iso.datetime();
const Base64 = z.base64().min(1);

export const KeyFingerprint = z.string().regex(/^[0-9a-f]{64}$/);

/** A key seals no more. */
export const KeyEnding = z.strictObject({
  /** retired: what it sealed stays good; revoked: what it sealed from the moment on does not. */
  kind: z.enum(["retired", "revoked"]),
  reason: z.string().min(1),
  effectiveAt: Moment,
});

export const KeyOrigin = z.enum(["self-issued", "file", "authority"]);
export type KeyOrigin = z.infer<typeof KeyOrigin>;

export const KeyPurpose = z.enum(["seal", "timestamp"]);
export type KeyPurpose = z.infer<typeof KeyPurpose>;

export const ListedKey = z.strictObject({
  /** SHA-256 of the certificate (DER), hex. */
  fingerprint: KeyFingerprint,
  /** seal: of documents; timestamp: of an authority that told this laboratory the time. */
  purpose: KeyPurpose,
  /** self-issued: made by the laboratory, vouched for by nobody else; authority: an outside timestamp authority's. */
  origin: KeyOrigin,
  algorithm: z.string().min(1),
  subject: z.string().min(1),
  /** DER, base64. */
  certificate: Base64,
  /** The certificates above it, DER, base64, nearest first. */
  chain: z.array(Base64),
  notBefore: Moment,
  notAfter: Moment,
  takenUpAt: Moment,
  ending: KeyEnding.nullable(),
});
export type ListedKey = z.infer<typeof ListedKey>;

export const KeyList = z.strictObject({
  format: z.literal("emfolio-key-list"),
  version: z.literal(1),
  laboratory: z.string().min(1),
  /** When this list was written: what was ended later, it cannot know. */
  issuedAt: Moment,
  keys: z.array(ListedKey),
});
export type KeyList = z.infer<typeof KeyList>;
