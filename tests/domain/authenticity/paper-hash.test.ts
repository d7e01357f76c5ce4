import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { readPaperHash } from "@/lib/domain/authenticity/paper-hash";
import { isToken, readAddress } from "@/lib/domain/authenticity/token";

describe("the hash on paper", () => {
  it("is read as hexadecimal digits and as base64url, to the same", () => {
    for (let seed = 0; seed < 50; seed++) {
      const hash = createHash("sha256").update(`${seed}`).digest();
      const hex = hash.toString("hex");
      for (const text of [
        hex,
        `#${hex.toUpperCase()}`,
        hash.toString("base64url"),
        ` #${hash.toString("base64url")}`,
      ])
        expect(readPaperHash(text)).toEqual({ kind: "given", hex });
    }
  });

  it("is missed where it is not there, and where it was cut or changed it is said", () => {
    const hex = "ab".repeat(32);
    for (const text of ["", "#", "  "]) expect(readPaperHash(text)).toEqual({ kind: "absent" });
    for (const text of [
      hex.slice(1),
      `${hex}0`,
      hex.replace("a", "g"),
      "A".repeat(42),
      `${"A".repeat(42)}B`,
      "%",
    ])
      expect([text, readPaperHash(text)]).toEqual([text, { kind: "broken" }]);
  });
});

describe("the address in a document", () => {
  const token = "t_-4".padEnd(43, "x");

  it("gives host and token", () => {
    expect(readAddress(`https://calibration.example/authenticity/${token}`)).toEqual({
      host: "calibration.example",
      token,
    });
    expect(readAddress(`http://127.0.0.1:3000/authenticity/${token}#ab`)?.host).toBe("127.0.0.1:3000");
  });

  it.each([
    "calibration.example",
    `ftp://calibration.example/authenticity/${token}`,
    `https://calibration.example/elsewhere/${token}`,
    `https://calibration.example/authenticity/${token}/more`,
    `https://calibration.example/authenticity/${token.slice(1)}`,
    "javascript:alert(1)",
  ])("is none in %j", (address) => {
    expect(readAddress(address)).toBeUndefined();
  });

  it("has a token of 43 signs, and no other", () => {
    expect(isToken(token)).toBe(true);
    for (const text of ["", "C-2026-0001", `${token}x`, `${token.slice(1)}!`])
      expect(isToken(text)).toBe(false);
  });
});
