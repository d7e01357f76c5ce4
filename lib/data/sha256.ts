import { createHash } from "node:crypto";

export const sha256 = (...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const hash = createHash("sha256");
  for (const part of parts) hash.update(part);
  return new Uint8Array(hash.digest());
};
