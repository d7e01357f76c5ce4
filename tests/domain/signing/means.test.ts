import { describe, expect, it } from "vitest";
import { decideMeans } from "@/lib/domain/signing/decide-means";
import { readSigningPolicy } from "@/lib/domain/signing/policy";
import { isSigningSessionOpen, signingSessionUntil } from "@/lib/domain/signing/session";

const fields = (result: ReturnType<typeof decideMeans>) =>
  result.ok ? result.value : Object.keys(result.refusal.fields ?? {}).toSorted();

describe("what is typed to sign", () => {
  it.each([
    [true, true, "password+code"],
    [true, false, ["secretCode"]],
    [false, true, ["password"]],
    [false, false, ["password", "secretCode"]],
  ])("first of a session: password %s, code %s: %j", (hasPassword, hasCode, expected) => {
    expect(fields(decideMeans({ isContinued: false, hasPassword, hasCode }))).toEqual(expected);
  });

  it.each([
    [true, true, "password+code"],
    [true, false, "password"],
    [false, true, "code"],
    [false, false, ["password"]],
  ])("a later one: password %s, code %s: %j", (hasPassword, hasCode, expected) => {
    expect(fields(decideMeans({ isContinued: true, hasPassword, hasCode }))).toEqual(expected);
  });
});

describe("a session of signing", () => {
  const at = (time: string) => new Date(`2026-03-05T${time}:00Z`);
  const policy = readSigningPolicy("{}");
  const session = {
    personSessionId: "one",
    openedAt: at("08:00"),
    lastSignedAt: at("10:00"),
    endedAt: null,
  };

  it("runs for 15 minutes since the last signature, in the sign-in it began in", () => {
    expect(policy).toEqual({ windowMinutes: 15, longestHours: 8 });
    expect(isSigningSessionOpen(session, "one", policy, at("10:14"))).toBe(true);
    expect(isSigningSessionOpen(session, "one", policy, at("10:15"))).toBe(false);
    expect(isSigningSessionOpen(session, "another", policy, at("10:01"))).toBe(false);
    expect(isSigningSessionOpen({ ...session, endedAt: at("10:01") }, "one", policy, at("10:02"))).toBe(
      false,
    );
  });

  it("and for eight hours at most, however busy it was", () => {
    const busy = { ...session, lastSignedAt: at("15:58") };
    expect(signingSessionUntil(busy, policy)).toEqual(at("16:00"));
    expect(isSigningSessionOpen(busy, "one", policy, at("15:59"))).toBe(true);
    expect(isSigningSessionOpen(busy, "one", policy, at("16:00"))).toBe(false);
  });

  it("as the laboratory sets it, within bounds", () => {
    expect(readSigningPolicy('{"windowMinutes":5}')).toEqual({ windowMinutes: 5, longestHours: 8 });
    for (const wrong of ['{"windowMinutes":0}', '{"windowMinutes":61}', '{"longestHours":13}', '{"other":1}'])
      expect(() => readSigningPolicy(wrong)).toThrow();
  });
});
