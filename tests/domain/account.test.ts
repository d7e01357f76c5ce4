import { describe, expect, it } from "vitest";
import { deviceWords } from "@/lib/domain/account/device-words";
import { decideLock } from "@/lib/domain/account/lock";
import { needsSecondFactor } from "@/lib/domain/account/needs-second-factor";
import { AccountPolicy, readAccountPolicy } from "@/lib/domain/account/policy";
import { isSessionOpen, sessionKindFor } from "@/lib/domain/account/session";
import { benchMay, benchMayNot, benchPermissions } from "@/lib/domain/staff/bench";
import { isCommonPassword } from "@/lib/domain/staff/common-passwords";
import { NewPassword } from "@/lib/domain/staff/password";
import { permissions } from "@/lib/domain/staff/permissions";

const now = new Date("2026-03-04T08:00:00Z");
const ago = (minutes: number) => new Date(now.getTime() - minutes * 60_000);
const policy = AccountPolicy.parse({});

describe("the bench", () => {
  it("has each permission on exactly one of its two lists", () => {
    const decided = [...benchPermissions, ...benchMayNot];
    expect(decided.toSorted()).toEqual(Object.keys(permissions).toSorted());
  });

  it("refuses what nobody has decided yet", () => {
    expect(benchMay("certificate.issue-to-anyone")).toBe(false);
    expect(benchMay("run.perform")).toBe(true);
  });
});

describe("a session", () => {
  const session = { kind: "full", lastSeenAt: ago(0), endsAt: ago(-60), endedAt: null };
  it.each([
    [session, true],
    [{ ...session, lastSeenAt: ago(119.9) }, true],
    [{ ...session, lastSeenAt: ago(120) }, false],
    [{ ...session, kind: "bench", lastSeenAt: ago(600) }, true],
    [{ ...session, kind: "bench", endsAt: now }, false],
    [{ ...session, endedAt: ago(1) }, false],
  ])("%j is open: %j", (held, open) => expect(isSessionOpen(held, policy, now)).toBe(open));

  it("is at the bench only for technicians who ask for it", () => {
    expect(sessionKindFor(true, ["technician"])).toBe("bench");
    expect(sessionKindFor(false, ["technician"])).toBe("full");
    expect(sessionKindFor(true, ["signatory", "customer"])).toBe("full");
  });
});

describe("a lock", () => {
  const failed = (minutes: number) => ({ succeeded: false, at: ago(minutes) });
  const failures = (count: number, from = 1) => Array.from({ length: count }, (_, i) => failed(from + i));
  it("falls at the tenth failure in a row, within a day, and says until when", () => {
    expect(decideLock(failures(9), null, policy, now)).toBeNull();
    expect(decideLock(failures(10), null, policy, now)).toEqual(ago(-30));
    expect(
      decideLock([...failures(6), { succeeded: true, at: ago(7) }, ...failures(9, 8)], null, policy, now),
    ).toBeNull();
    expect(decideLock(failures(10, 24 * 60 - 5), null, policy, now)).toBeNull();
  });
  it("is not made longer while it lasts, and begins to count anew after it", () => {
    expect(decideLock(failures(20), ago(-1), policy, now)).toBeNull();
    expect(decideLock(failures(20), ago(9.5), policy, now)).toBeNull();
    expect(decideLock(failures(20), ago(10), policy, now)).not.toBeNull();
  });
});

describe("the laboratory's rule", () => {
  it("has a figure for whatever is not said, and takes no other words", () => {
    expect(readAccountPolicy("{}")).toEqual({
      lockAfter: 10,
      lockMinutes: 30,
      idleMinutes: 120,
      secondFactorRoles: [],
    });
    expect(() => readAccountPolicy('{"lockAfter":1}')).toThrow();
    expect(() => readAccountPolicy('{"secondFactorRoles":["owner"]}')).toThrow();
  });
  it("asks whoever holds one of the roles for a code", () => {
    const asked = { ...policy, secondFactorRoles: ["signatory" as const] };
    expect(needsSecondFactor(["technician", "signatory"], asked)).toBe(true);
    expect(needsSecondFactor(["technician"], asked)).toBe(false);
  });
});

describe("passwords that are guessed first", () => {
  it("are refused, also with capitals and spaces", () => {
    for (const typed of ["password1234", "QwertyUiop12", "Correct Horse Battery Staple"]) {
      expect(isCommonPassword(typed)).toBe(true);
      expect(NewPassword.safeParse(typed).success).toBe(false);
    }
    expect(NewPassword.safeParse("warm each tip first").success).toBe(true);
  });
});

describe("a device in words", () => {
  it.each([
    [
      "Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0 Safari/537.36 Edg/126.0",
      "Edge on Windows",
    ],
    ["Mozilla/5.0 (X11; Linux x86_64; rv:127.0) Gecko/20100101 Firefox/127.0", "Firefox on Linux"],
    [
      "Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1",
      "Safari on iOS",
    ],
    [
      "Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0 Mobile Safari/537.36",
      "Chrome on Android",
    ],
    ["curl/8.0", "an unknown device"],
    ["", "an unknown device"],
  ])("%s", (said, words) => expect(deviceWords(said)).toBe(words));
});
