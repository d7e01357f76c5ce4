import { describe, expect, it } from "vitest";
import type { Authorisation } from "@/lib/domain/authorisation/authorisation";
import { type Asked, decideAuthorised } from "@/lib/domain/authorisation/decide-authorised";
import { AuthorisationInput } from "@/lib/domain/authorisation/schema";
import { authorisedFor } from "@/lib/domain/authorisation/words";

const at = new Date("2026-03-05T10:00:00Z");
const held: Authorisation = {
  id: "a",
  activity: "sign-off",
  typeLetters: "KN",
  fromCelsius: 0,
  toCelsius: 1100,
  scope: "inside",
  procedureId: "p1",
  validFrom: "2026-01-01",
  validUntil: "2026-03-05",
  withdrawnAt: null,
};
const asked: Asked = {
  activity: "sign-off",
  subject: "T-2026-0001",
  typeLetters: ["K"],
  nominalCelsius: [0, 600, 1100],
  hasOutsideScope: false,
  procedureIds: ["p1"],
};
const answer = (authorisations: readonly Authorisation[], change: Partial<Asked> = {}, when = at) => {
  const result = decideAuthorised(authorisations, { ...asked, ...change }, when);
  return result.ok ? result.value.id : result.refusal.message;
};

describe("who may sign off what", () => {
  it("is covered up to and with the limits of type, range and days", () => {
    expect(answer([held])).toBe("a");
    expect(answer([held], {}, new Date("2026-01-01T00:00:00Z"))).toBe("a");
    expect(answer([held], {}, new Date("2026-03-05T23:59:59Z"))).toBe("a");
  });

  it.each<[string, readonly Authorisation[], Partial<Asked>, RegExp]>([
    ["none held", [], {}, /sign off T-2026-0001: you hold no authorisation/],
    ["another activity", [{ ...held, activity: "opinion" }], {}, /you hold no authorisation/],
    ["over", [{ ...held, validUntil: "2026-03-04" }], {}, /ended on 2026-03-04/],
    ["not begun", [{ ...held, validFrom: "2026-03-06", validUntil: null }], {}, /begins on 2026-03-06/],
    ["withdrawn", [{ ...held, withdrawnAt: at }], {}, /was withdrawn/],
    ["another type", [held], { typeLetters: ["K", "S"] }, /of type K, S, and your authorisation is for K, N/],
    ["above its range", [held], { nominalCelsius: [600, 1100.1] }, /600 °C to 1100.1 °C.*0 °C to 1100 °C/],
    ["below its range", [held], { nominalCelsius: [-40] }, /−40 °C to −40 °C.*0 °C to 1100 °C/],
    ["outside the scope", [held], { hasOutsideScope: true }, /outside the laboratory's scope/],
    ["another procedure", [held], { procedureIds: ["p2"] }, /procedure/],
    ["two procedures, one named", [held], { procedureIds: ["p1", "p2"] }, /procedure/],
  ])("names what is missing: %s", (_, authorisations, change, message) => {
    expect(answer(authorisations, change)).toMatch(message);
  });

  it("is not put together from two authorisations that each cover a half", () => {
    const low = { ...held, id: "low", toCelsius: 600 };
    const high = { ...held, id: "high", fromCelsius: 600, typeLetters: "" };
    expect(answer([low, high])).toMatch(/0 °C to 600 °C or 600 °C to 1100 °C/);
    expect(answer([low, high], { nominalCelsius: [600, 700] })).toBe("high");
  });

  it("covers every type, procedure and scope where it says so", () => {
    const wide = { ...held, typeLetters: "", procedureId: null, scope: "any" as const, validUntil: null };
    expect(answer([wide], { typeLetters: ["S", "B"], procedureIds: ["p7"], hasOutsideScope: true })).toBe(
      "a",
    );
    expect(authorisedFor(wide)).toBe("every type, 0 °C to 1100 °C, inside and outside the scope");
    expect(authorisedFor(held)).toBe(
      "types K, N, 0 °C to 1100 °C, inside the laboratory’s scope only, one procedure, until 2026-03-05",
    );
  });

  it("counts from the moment of a withdrawal on, not before", () => {
    const withdrawn = { ...held, withdrawnAt: new Date("2026-03-05T10:00:01Z") };
    expect(answer([withdrawn])).toBe("a");
    expect(answer([withdrawn], {}, new Date("2026-03-05T10:00:01Z"))).toMatch(/was withdrawn/);
  });
});

describe("what is typed to grant one", () => {
  const typed = {
    ...{ personId: crypto.randomUUID(), activity: "sign-off", typeLetters: ["N", "K", "K"], scope: "inside" },
    ...{ fromCelsius: "0", toCelsius: "1100", procedureId: null, validFrom: "2026-01-01", validUntil: null },
    basis: "Ten runs beside a signatory.",
  };
  const wrong = (change: object) =>
    AuthorisationInput.safeParse({ ...typed, ...change }).error?.issues.map(({ path }) => path.join("."));

  it("keeps each type once, in order", () => {
    expect(AuthorisationInput.parse(typed)).toMatchObject({ typeLetters: ["K", "N"], toCelsius: 1100 });
  });

  it.each([
    [{ toCelsius: "0" }, "toCelsius"],
    [{ validUntil: "2025-12-31" }, "validUntil"],
    [{ basis: "  " }, "basis"],
    [{ typeLetters: ["Q"] }, "typeLetters.0"],
    [{ scope: "all" }, "scope"],
  ])("refuses %j at its field", (change, field) => {
    expect(wrong(change)).toEqual([field]);
  });
});
