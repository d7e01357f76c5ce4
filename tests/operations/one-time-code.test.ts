import { URI } from "otpauth";
import { describe, expect, it } from "vitest";
import { base32, keyUri, secretOfKey } from "@/lib/domain/account/key-uri";
import { codeAt, newRecoveryCode, recoveryHash, stepOf, stepOfCode } from "@/lib/operations/one-time-code";

const secret = new TextEncoder().encode("12345678901234567890");

/** RFC 6238, appendix B, table 1: the rows of SHA-1, eight digits. */
const published = [
  [59, "94287082"],
  [1111111109, "07081804"],
  [1111111111, "14050471"],
  [1234567890, "89005924"],
  [2000000000, "69279037"],
  [20000000000, "65353130"],
] as const;

describe("one-time codes", () => {
  it.each(published)("at %d s are those of RFC 6238, appendix B", (seconds, code) => {
    const step = stepOf(new Date(seconds * 1000));
    expect(codeAt(secret, step, 8)).toBe(code);
    // Six digits are the last six of eight (RFC 4226, 5.3: modulo a power of ten).
    expect(codeAt(secret, step)).toBe(code.slice(2));
  });

  it("are read with spaces, and belong to the present step or the one before", () => {
    const now = new Date(1111111111_000);
    expect(stepOfCode(secret, " 050 471 ", now)).toBe(stepOf(now));
    expect(stepOfCode(secret, "081804", now)).toBe(stepOf(now) - 1);
    expect(stepOfCode(secret, codeAt(secret, stepOf(now) + 1), now)).toBeNull();
    for (const typed of ["", "05047", "0504711", "14050471", "o50471", "５０４７１１"])
      expect(stepOfCode(secret, typed, now)).toBeNull();
  });

  it("their secret is read back from the picture's text by an authenticator's own reader", () => {
    const read = URI.parse(keyUri(secret, "ada@example.test", "Invented & Sons: heat"));
    expect(read).toMatchObject({ issuer: "Invented & Sons: heat", algorithm: "SHA1", digits: 6, period: 30 });
    expect(read.secret.base32).toBe(base32(secret));
    expect(Buffer.from(read.secret.buffer).equals(Buffer.from(secret))).toBe(true);
  });

  it("RFC 4648, 10: base32", () => {
    const texts = [
      ["", ""],
      ["f", "MY"],
      ["fo", "MZXQ"],
      ["foo", "MZXW6"],
      ["foobar", "MZXW6YTBOI"],
    ] as const;
    for (const [text, coded] of texts) expect(base32(new TextEncoder().encode(text))).toBe(coded);
    for (const [text, coded] of texts)
      if (text !== "") expect(secretOfKey(coded.toLowerCase())).toEqual(new TextEncoder().encode(text));
    expect([secretOfKey(""), secretOfKey("JBSW1")]).toEqual([null, null]);
  });
});

describe("recovery codes", () => {
  it("differ, are read without regard to case and hyphens, and have sixteen signs", () => {
    const codes = new Set(Array.from({ length: 200 }, newRecoveryCode));
    expect(codes.size).toBe(200);
    for (const code of codes) expect(code).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);
    expect(recoveryHash("ABCD efgh-jkmn 2345")).toBe(recoveryHash("abcd-efgh-jkmn-2345"));
  });
});
