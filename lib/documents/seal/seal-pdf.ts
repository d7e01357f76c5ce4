import type { SealKeyMaterial } from "./key-material";

export type SealOptions = {
  /** What the seal says of its time; nothing is proven by it. */
  readonly at: Date;
  /** SHA-256 of the signature value in, an RFC 3161 timestamp token (DER) out; null = no timestamp. */
  readonly timestamp: ((signatureHash: Uint8Array) => Promise<Uint8Array>) | null;
  readonly reason: string;
  readonly location: string;
};

export type SealPdf = (pdf: Uint8Array, key: SealKeyMaterial, options: SealOptions) => Promise<Uint8Array>;
