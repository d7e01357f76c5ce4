import { describe, expect, it } from "vitest";
import { decideRetire, decideRevoke } from "@/lib/domain/seal/decide-ending";
import { decideMaySeal } from "@/lib/domain/seal/decide-may-seal";
import { keyState } from "@/lib/domain/seal/key-state";

const at = (text: string) => new Date(`${text}Z`);
const retired = { kind: "retired", reason: "Renewed", effectiveAt: at("2026-06-01T00:00") };
const revoked = { kind: "revoked", reason: "Lost", effectiveAt: at("2026-05-01T00:00") };
const key = (...endings: (typeof retired)[]) => ({
  ...{ notBefore: at("2026-01-01T00:00"), notAfter: at("2027-01-01T00:00"), endings },
  ...{ takenUpAt: at("2026-01-01T00:00"), fingerprint: "ab".repeat(32), origin: "file" },
});

describe("a key at a moment", () => {
  it.each([
    ["before it begins", key(), "2025-12-31T23:59", { kind: "not-yet" }],
    ["in the middle", key(), "2026-07-01T00:00", { kind: "in-force" }],
    ["60 days before its end", key(), "2026-11-02T00:00", { kind: "in-force" }],
    ["a minute later", key(), "2026-11-02T00:01", { kind: "ends-soon", days: 59 }],
    ["at its end", key(), "2027-01-01T00:00", { kind: "ends-soon", days: 0 }],
    ["after its end", key(), "2027-01-01T00:01", { kind: "expired" }],
    ["before it was retired", key(retired), "2026-05-31T23:59", { kind: "in-force" }],
    [
      "from when it was retired",
      key(retired),
      "2026-06-01T00:00",
      { kind: "retired", from: retired.effectiveAt },
    ],
    [
      "retired and revoked",
      key(retired, revoked),
      "2026-07-01T00:00",
      { kind: "revoked", from: revoked.effectiveAt },
    ],
  ])("%s", (_, one, now, state) => {
    expect(keyState(one, at(now))).toEqual(state);
  });

  it.each([
    ["2025-12-31T00:00", key(), "in force only from 2026-01-01"],
    ["2027-02-01T00:00", key(), "ended on 2027-01-01"],
    ["2026-07-01T00:00", key(revoked), "was revoked from 2026-05-01"],
  ])("seals nothing at %s, and says what to do", (now, one, why) => {
    expect(decideMaySeal(one, at(now))).toMatchObject({
      ...{ ok: false, refusal: { code: "rule", message: expect.stringMatching(`${why}.*SEAL_KEY_FILE`) } },
    });
    const own = { ...one, origin: "self-issued" };
    expect(decideMaySeal(own, at(now))).toMatchObject({
      refusal: { message: expect.stringContaining("Start again") },
    });
  });

  it("seals until its last day", () => {
    expect(decideMaySeal(key(), at("2026-12-31T00:00")).ok).toBe(true);
  });
});

describe("an end", () => {
  const now = at("2026-07-01T00:00");
  it("comes once, and a revocation after a retirement too, told of what happened", () => {
    expect(decideRetire(key()).ok).toBe(true);
    expect(decideRetire(key(retired)).ok).toBe(false);
    expect(decideRevoke(key(retired), at("2026-05-01T00:00"), now).ok).toBe(true);
    expect(decideRevoke(key(revoked), at("2026-05-01T00:00"), now).ok).toBe(false);
    expect(decideRevoke(key(), now, now).ok).toBe(true);
    expect(decideRevoke(key(), at("2026-07-01T00:01"), now)).toMatchObject({
      refusal: { fields: { effectiveAt: expect.any(String) } },
    });
  });
});
