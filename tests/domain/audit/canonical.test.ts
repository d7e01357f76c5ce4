import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { canonical } from "@/lib/domain/audit/canonical";

const numberOf = (hex: string): number => {
  const bytes = new DataView(new ArrayBuffer(8));
  bytes.setBigUint64(0, BigInt(`0x${hex}`));
  return bytes.getFloat64(0);
};

/** RFC 8785, appendix B: IEEE 754 bits and their text. */
const appendixB: readonly [string, string][] = [
  ["0000000000000000", "0"],
  ["8000000000000000", "0"],
  ["444b1ae4d6e2ef50", "1e+21"],
  ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
  ["becbf647612f3696", "-0.0000033333333333333333"],
];

describe("canonical JSON, RFC 8785", () => {
  it.each(appendixB)("writes the number with the bits %s as %s (appendix B)", (bits, text) => {
    expect(canonical(numberOf(bits))).toBe(text);
  });

  it("sorts keys by their UTF-16 code units (section 3.2.3)", () => {
    expect(canonical({ "\u20ac": 1, "\r": 2, "1": 3, "\ud83d\ude00": 4, "\ufb33": 5 })).toBe(
      '{"\\r":2,"1":3,"€":1,"😀":4,"\ufb33":5}',
    );
  });

  it("refuses what JSON cannot hold", () => {
    expect(() => canonical({ a: Number.NaN })).toThrow();
    expect(() => canonical({ a: Number.POSITIVE_INFINITY })).toThrow();
  });

  const folder = path.join(process.env.REFERENCE_DIR ?? "", "jcs");
  const vectors =
    process.env.REFERENCE_DIR && existsSync(folder) ? readdirSync(path.join(folder, "input")) : [];
  if (vectors.length === 0) console.log("RFC 8785 file vectors: not looked at, REFERENCE_DIR is not set");
  for (const name of vectors)
    it(`agrees with the published vector ${name}`, () => {
      const input = readFileSync(path.join(folder, "input", name), "utf8");
      const output = readFileSync(path.join(folder, "output", name), "utf8").trim();
      expect(canonical(JSON.parse(input))).toBe(output);
    });
});
