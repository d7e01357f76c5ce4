import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import { Secret, TOTP } from "otpauth";

/** RFC 6238 with what every authenticator knows: SHA-1, six digits, thirty seconds (RFC 6238, 1.2 and 4.1). */
export const stepSeconds = 30;
const digits = 6;

export const stepOf = (now: Date): number => Math.floor(now.getTime() / 1000 / stepSeconds);

const asSecret = (secret: Uint8Array): Secret => new Secret({ buffer: Uint8Array.from(secret).buffer });

/** The code of one time step. */
export const codeAt = (secret: Uint8Array, step: number, length = digits): string =>
  new TOTP({ secret: asSecret(secret), algorithm: "SHA1", digits: length, period: stepSeconds }).generate({
    timestamp: step * stepSeconds * 1000,
  });

/**
 * Which step a typed code belongs to: the present one or the one before (RFC 6238, 5.2 allows one step for what typing
 * and clocks take; OWASP ASVS 5.0, 6.5 wants no more). Never one of the future. Null: none.
 */
export const stepOfCode = (secret: Uint8Array, typed: string, now: Date): number | null => {
  const code = typed.replace(/[\s-]/g, "");
  if (!/^\d{6}$/.test(code)) return null;
  const present = stepOf(now);
  const matches = (step: number) => timingSafeEqual(Buffer.from(codeAt(secret, step)), Buffer.from(code));
  return [present, present - 1].find(matches) ?? null;
};

/** 160 bits, as RFC 4226, 4 advises. */
export const newSecret = (): Uint8Array => randomBytes(20);

const letters = "abcdefghjkmnpqrstuvwxyz23456789";

/** Sixteen of 31 signs that are not mistaken for each other: 79 bits, so that a plain hash is enough. */
export const newRecoveryCode = (): string => {
  let code = "";
  while (code.length < 16) {
    const [byte = 255] = randomBytes(1);
    // 248 = 8 × 31: what lies above would favour the first letters.
    if (byte < 248) code += letters[byte % 31];
  }
  return code.replace(/(.{4})(?=.)/g, "$1-");
};

export const recoveryHash = (typed: string): string =>
  createHash("sha256").update(typed.toLowerCase().replace(/[\s-]/g, "")).digest("hex");
