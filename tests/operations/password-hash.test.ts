import { describe, expect, it } from "vitest";
import { hashPassword, nobodysHash, verifyPassword } from "@/lib/operations/password-hash";

const parameters = "$argon2id$v=19$m=65536,t=3,p=1$";

describe("passwords", () => {
  it("are argon2id with 64 MiB, three passes, one lane, and a salt of their own", async () => {
    const [first, second] = await Promise.all([hashPassword("warm each tip"), hashPassword("warm each tip")]);
    expect(first.startsWith(parameters)).toBe(true);
    expect(first).not.toBe(second);
    expect(await verifyPassword(first, "warm each tip")).toBe(true);
    expect(await verifyPassword(first, "warm each tip ")).toBe(false);
  });

  it("an unknown address is compared with a hash of the same cost", () => {
    expect(nobodysHash.startsWith(parameters)).toBe(true);
  });

  it("are hashed four at a time; a flood is told to come back instead of filling the memory", async () => {
    const flood = await Promise.allSettled(
      Array.from({ length: 60 }, () => verifyPassword(nobodysHash, "x")),
    );
    const turnedAway = flood.filter((one) => one.status === "rejected");
    expect(turnedAway.length).toBe(60 - 4 - 40);
    expect(turnedAway.every((one) => one.reason.refusal.code === "too-many")).toBe(true);
    expect(await verifyPassword(nobodysHash, "x")).toBe(false);
  });
});
