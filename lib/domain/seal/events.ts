import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { KeyFingerprint, KeyOrigin, KeyPurpose } from "./key-list";

const short = (fingerprint: string): string => `${fingerprint.slice(0, 16)}…`;

const which = { fingerprint: KeyFingerprint, purpose: KeyPurpose };

const whose = (purpose: z.infer<typeof KeyPurpose>): string =>
  purpose === "seal" ? "the seal’s key" : "the timestamp authority’s key";

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const sealEvents = {
  keyTakenUp: defineEvent({
    action: "seal-key.taken-up",
    entityKind: "seal-key",
    payload: z.strictObject({
      ...which,
      origin: KeyOrigin,
      algorithm: z.string(),
      notAfter: z.string(),
    }),
    sentence: (p) =>
      `took up ${whose(p.purpose)} ${short(p.fingerprint)} (${p.algorithm}, ${p.origin}, until ${p.notAfter.slice(0, 10)})`,
  }),
  keyRetired: defineEvent({
    action: "seal-key.retired",
    entityKind: "seal-key",
    payload: z.strictObject({ ...which, reason: z.string() }),
    sentence: (p) => `retired ${whose(p.purpose)} ${short(p.fingerprint)}: ${p.reason}`,
  }),
  keyRevoked: defineEvent({
    action: "seal-key.revoked",
    entityKind: "seal-key",
    payload: z.strictObject({ ...which, reason: z.string(), effectiveAt: z.string() }),
    sentence: (p) =>
      `revoked ${whose(p.purpose)} ${short(p.fingerprint)} from ${p.effectiveAt.slice(0, 16)}: ${p.reason}`,
  }),
} as const;
