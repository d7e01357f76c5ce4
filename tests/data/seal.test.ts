import { beforeAll, expect, it } from "vitest";
import { configureSeal, seal, sealKeyOf, unseal } from "@/lib/data/seal";

const secret = "an installation's secret of 32 characters or more";
const text = Buffer.from("JBSWY3DPEHPK3PXP");

beforeAll(() => configureSeal(sealKeyOf(secret)));

it("opens what it sealed, and seals the same never to the same bytes", () => {
  const [first, second] = [seal("webhook 1", text), seal("webhook 1", text)];
  expect(first.equals(second)).toBe(false);
  expect(first.includes(text)).toBe(false);
  expect([unseal("webhook 1", first), unseal("webhook 1", second)]).toEqual([text, text]);
});

it("does not open for another owner, after a flipped bit, or with another key", () => {
  const sealed = seal("webhook 1", text);
  expect(() => unseal("webhook 2", sealed)).toThrow();
  for (const place of [0, 12, 28, sealed.length - 1]) {
    const flipped = Buffer.from(sealed);
    flipped[place] = flipped[place]! ^ 1;
    expect(() => unseal("webhook 1", flipped)).toThrow();
  }
  configureSeal(sealKeyOf(`${secret}.`));
  expect(() => unseal("webhook 1", sealed)).toThrow();
  configureSeal(sealKeyOf(secret));
});

it("takes no key of another size", () => {
  for (const wrong of ["", "00", "zz".repeat(32)]) expect(() => configureSeal(wrong)).toThrow("32 bytes");
});
