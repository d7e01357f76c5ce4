import { createHash } from "node:crypto";

/** SHA-256 in lower-case hex, and as bytes: the one that the domain's hashes are given. */
export const sha256 = (bytes: Uint8Array): Uint8Array =>
  Uint8Array.from(createHash("sha256").update(bytes).digest());

export const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");
