import { describe, expect, it } from "vitest";
import { type AcceptanceCheck, checkKeys } from "@/lib/domain/calibration/acceptance-check";
import { assessCalibration } from "@/lib/domain/calibration/assess-calibration";
import { decideCalibrationUse } from "@/lib/domain/calibration/decide-calibration";
import { facts } from "./certificate-facts-of";

const good = assessCalibration(facts);
const spoilt = (key: AcceptanceCheck["key"]): readonly AcceptanceCheck[] =>
  good.map((one) => (one.key === key ? { ...one, answer: "no" } : one));
const given = {
  personId: "second",
  recordedById: "first",
  decisions: [],
  checks: good,
  decision: "accepted",
  confirmed: checkKeys,
  reason: "",
} as const;
const refusalOf = (more: object) => {
  const result = decideCalibrationUse({ ...given, ...more });
  return result.ok ? null : result.refusal;
};

describe("the decision on a calibration", () => {
  it("is another person's, accepting or rejecting", () => {
    expect(refusalOf({})).toBeNull();
    expect(refusalOf({ personId: "first" })).toMatchObject({ code: "rule" });
    expect(refusalOf({ personId: "first", decision: "rejected", reason: "typed wrong" })).toMatchObject({
      code: "rule",
    });
    // Recorded before anybody was named.
    expect(refusalOf({ recordedById: null })).toBeNull();
  });

  it("is taken once; an accepted one can still be rejected, a rejected one stays so", () => {
    const accepted = { decisions: [{ decision: "accepted" }] };
    const rejected = { decisions: [{ decision: "accepted" }, { decision: "rejected" }] };
    expect(refusalOf(accepted)).toMatchObject({ code: "wrong-state" });
    expect(refusalOf({ ...accepted, decision: "rejected", reason: "read wrongly" })).toBeNull();
    expect(refusalOf(rejected)).toMatchObject({ code: "wrong-state" });
    expect(refusalOf({ ...rejected, decision: "rejected", reason: "again" })).toMatchObject({
      code: "wrong-state",
    });
  });

  it("confirms every answer, and says why where it rejects", () => {
    const some = checkKeys.filter((key) => key !== "range");
    expect(refusalOf({ confirmed: some })?.fields).toEqual({ "confirmed.range": expect.any(String) });
    expect(refusalOf({ decision: "rejected", confirmed: [] })?.fields).toEqual({
      reason: expect.any(String),
    });
  });

  it.each(["identity", "issuer", "traceability", "criterion"] as const)("is never yes against %s", (key) => {
    const refusal = refusalOf({ checks: spoilt(key), reason: "all the same" });
    expect(refusal?.fields?.[`confirmed.${key}`]).toMatch(/cannot be accepted/);
  });

  it.each(["range", "uncertainty"] as const)("is yes against %s with a reason only", (key) => {
    expect(refusalOf({ checks: spoilt(key) })?.fields).toEqual({ reason: expect.any(String) });
    expect(refusalOf({ checks: spoilt(key), reason: "used up to 900 °C" })).toBeNull();
  });
});
