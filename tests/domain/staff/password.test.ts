import { describe, expect, it } from "vitest";
import { NewPassword, namesItsOwner } from "@/lib/domain/staff/password";

const holds = (password: string) => NewPassword.safeParse(password).success;

describe("NewPassword", () => {
  it("asks for length, not for composition", () => {
    expect(holds("four words in a row")).toBe(true);
    expect(holds("abcdefghijkz")).toBe(true);
    expect(holds("abcdefghijk")).toBe(false);
    expect(holds(`${"0123456789".repeat(20)}`)).toBe(true);
    expect(holds(`${"0123456789".repeat(20)}x`)).toBe(false);
  });

  it("refuses one made of four characters", () => {
    expect(holds("abababababab")).toBe(false);
    expect(holds("aaaaaaaaaaaaaaaa")).toBe(false);
  });
});

describe("namesItsOwner", () => {
  it("finds the address, whole or with a few characters after its name", () => {
    expect(namesItsOwner("Mira.Thorne@example.test", "mira.thorne@example.test")).toBe(true);
    expect(namesItsOwner("mira.thorne2026", "mira.thorne@example.test")).toBe(true);
    expect(namesItsOwner("warm each tip first", "mira.thorne@example.test")).toBe(false);
    expect(namesItsOwner("mir walks uphill slowly", "mir@example.test")).toBe(false);
  });
});
