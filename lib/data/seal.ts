import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from "node:crypto";

/** `globalThis`, because Next loads modules more than once. */
const store = globalThis as unknown as { emfolioSealKey?: Buffer };

/**
 * Secrets that have to be read again (one-time codes, webhooks) lie in the database sealed, and the key lies outside it:
 * told once at start by whoever runs the process, derived from the installation's secret (`sealKeyOf`).
 */
export const configureSeal = (keyHex: string): void => {
  if (!/^[0-9a-f]{64}$/.test(keyHex))
    throw new Error("the key of sealed secrets is 32 bytes, in hexadecimal");
  store.emfolioSealKey = Buffer.from(keyHex, "hex");
};

/** 32 bytes in hexadecimal, HKDF-SHA256 (RFC 5869): whoever learns it does not learn the installation's secret. */
export const sealKeyOf = (installationSecret: string): string =>
  Buffer.from(hkdfSync("sha256", installationSecret, "", "emfolio sealed secrets", 32)).toString("hex");

const key = (): Buffer => {
  if (!store.emfolioSealKey)
    throw new Error("configureSeal has not been called: no key of sealed secrets is known");
  return store.emfolioSealKey;
};

const algorithm = "aes-256-gcm";

/**
 * AES-256-GCM: 12 bytes of nonce, 16 of tag, then the sealed bytes. `owner` says what it belongs to, e.g.
 * "webhook <id>"; moved to another row, it does not open.
 */
export const seal = (owner: string, bytes: Uint8Array): Buffer => {
  const nonce = randomBytes(12);
  const cipher = createCipheriv(algorithm, key(), nonce).setAAD(Buffer.from(owner));
  const sealed = Buffer.concat([cipher.update(bytes), cipher.final()]);
  return Buffer.concat([nonce, cipher.getAuthTag(), sealed]);
};

/** The bytes again. Throws where they were changed, moved, or sealed with another key. */
export const unseal = (owner: string, sealed: Uint8Array): Buffer => {
  const whole = Buffer.from(sealed);
  const decipher = createDecipheriv(algorithm, key(), whole.subarray(0, 12)).setAAD(Buffer.from(owner));
  decipher.setAuthTag(whole.subarray(12, 28));
  return Buffer.concat([decipher.update(whole.subarray(28)), decipher.final()]);
};
