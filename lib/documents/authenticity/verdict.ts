import type { CertificateContent } from "@/lib/domain/certificate/content";

/** ETSI EN 319 102-1, 5.1.3: the three main results of a check. */
export type Verdict = "total-passed" | "total-failed" | "indeterminate";

/** Why, in the words of EN 319 102-1, 5.1.3 (from memory), and four of our own for what a document is and says. */
export type Indication =
  | "PASSED"
  | "FORMAT_FAILURE"
  | "HASH_FAILURE"
  | "SIG_CRYPTO_FAILURE"
  | "SIG_CONSTRAINTS_FAILURE"
  | "REVOKED"
  | "EXPIRED"
  | "NOT_YET_VALID"
  | "TIMESTAMP_ORDER_FAILURE"
  | "NO_SIGNING_CERTIFICATE_FOUND"
  | "NO_POE"
  | "NO_CRYPTOGRAPHY"
  | "NO_SEAL"
  | "NOT_THE_PDF"
  | "CONTENT_MISMATCH"
  | "OTHER_DOCUMENT";

/** In the order in which they are taken. */
export const stepKeys = [
  "pdf",
  "one-seal",
  "coverage",
  "digest",
  "signature",
  "signing-certificate",
  "issuer",
  "timestamp",
  "validity",
  "revocation",
  "content",
] as const;
export type StepKey = (typeof stepKeys)[number];

export type Step = {
  readonly key: StepKey;
  /** unknown: could not be decided here; skipped: not reached, or nothing to check. */
  readonly state: "passed" | "failed" | "unknown" | "skipped";
  /** One or two sentences for whoever holds the document. */
  readonly text: string;
};

export type Attachment = { readonly name: string; readonly bytes: Uint8Array };

export type FileVerdict = {
  readonly verdict: Verdict;
  /** In words, for whoever holds the document. */
  readonly reason: string;
  readonly indication: Indication;
  readonly steps: readonly Step[];
  /** What the attached content says; null where it could not be read. Believe it only with total-passed. */
  readonly content: CertificateContent | null;
  /** SHA-256 of the attached content's bytes, hex. */
  readonly contentHash: string | null;
  /** When the sealing laboratory says it sealed. */
  readonly sealedAt: Date | null;
  /** When a timestamp authority says the seal was there. */
  readonly timestampedAt: Date | null;
  /** SHA-256 of the certificate that the seal carries, hex. */
  readonly fingerprint: string | null;
  readonly attachments: readonly Attachment[];
};
