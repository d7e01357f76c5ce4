import { sha256 } from "../sha256";

const encoder = new TextEncoder();

/** SHA-256 over the stored evidence text and the digest of the blocks (32 bytes, last): all that went into an evaluation. */
export const inputsDigest = (storedEvidence: string, blocksDigest: Uint8Array): Uint8Array<ArrayBuffer> =>
  sha256(encoder.encode(storedEvidence), blocksDigest);
