import { expect, it } from "vitest";
import { AccountPolicy } from "@/lib/domain/account/policy";
import { decideSigner, type Signer } from "@/lib/domain/signing/decide-signer";

const now = new Date("2026-03-05T10:00:00Z");
const signer: Signer = {
  active: true,
  lockedUntil: null,
  roles: ["signatory"],
  session: {
    kind: "full",
    lastSeenAt: now,
    endsAt: new Date("2026-03-05T19:00:00Z"),
    endedAt: null,
  },
  hasSecondFactor: true,
};
const answer = (change: Partial<Signer>) => {
  const result = decideSigner({ ...signer, ...change }, AccountPolicy.parse({}), now);
  return result.ok ? "may" : result.refusal.code;
};

it("lets a signatory sign who is signed in and has one-time codes", () => {
  expect(answer({})).toBe("may");
  expect(answer({ lockedUntil: new Date("2026-03-05T09:59:00Z") })).toBe("may");
});

it.each<[string, Partial<Signer>, string]>([
  ["deactivated", { active: false }, "not-permitted"],
  ["role taken away", { roles: ["technician"] }, "not-permitted"],
  ["a role nobody knows", { roles: ["chief"] }, "not-permitted"],
  ["no session", { session: null }, "not-permitted"],
  ["session ended", { session: { ...signer.session!, endedAt: now } }, "not-permitted"],
  [
    "session left alone",
    { session: { ...signer.session!, lastSeenAt: new Date("2026-03-05T07:00:00Z") } },
    "not-permitted",
  ],
  ["at the bench", { session: { ...signer.session!, kind: "bench" } }, "not-permitted"],
  ["locked", { lockedUntil: new Date("2026-03-05T10:01:00Z") }, "too-many"],
  ["no one-time codes", { hasSecondFactor: false }, "rule"],
])("refuses: %s", (_, change, code) => {
  expect(answer(change)).toBe(code);
});
