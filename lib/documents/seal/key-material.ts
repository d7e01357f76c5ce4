import type { CertificateFacts } from "@/lib/documents/authenticity/certificate-facts";

/** A key that seals, in the memory of the process that seals: never in the database, never in a log. */
export type SealKeyMaterial = {
  readonly family: "RSA" | "ECDSA";
  /** Not extractable. */
  readonly privateKey: CryptoKey;
  /** DER. */
  readonly certificate: Uint8Array<ArrayBuffer>;
  /** The certificates above it, DER, nearest first; without the root where the root signed itself. */
  readonly chain: readonly Uint8Array<ArrayBuffer>[];
  readonly facts: CertificateFacts;
};
