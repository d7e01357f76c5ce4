import { describe, expect, it } from "vitest";
import { noMarks } from "@/lib/domain/order/line-marks";
import { decideRuleSetIntake, ruleSetProblems } from "@/lib/domain/order/rule-set";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { decideSubcontracting, isApprovedOn } from "@/lib/domain/order/subcontracting";
import { noUseTerms } from "@/lib/domain/order/use-terms";
import { lineInput, orderInput } from "../../support/orders";

const at = (...celsius: number[]) => celsius.map((value) => ({ typed: String(value), celsius: value }));
const audited = "audited-heat-treatment";
const fieldsOf = (setpoints: number[], terms: Partial<typeof noUseTerms> | object, ruleSet = audited) =>
  ruleSetProblems(ruleSet as typeof audited, {
    temperatureUnit: "C",
    setpoints: at(...setpoints),
    useTerms: { ...noUseTerms, ...terms },
  }).map(({ field }) => field);

describe("the rule set of audited heat treatment", () => {
  it("wants a largest interval on each line, and setpoints that keep to it", () => {
    expect(fieldsOf([300, 900], {})).toEqual(["intervalChoice"]);
    const most = { largestIntervalCelsius: 140, intervalRule: "as agreed" };
    expect(fieldsOf([300, 440, 580], most)).toEqual([]);
    expect(fieldsOf([300, 440.01], most)).toEqual(["setpoints"]);
    expect(fieldsOf([300], most)).toEqual([]);
    expect(fieldsOf([300, 900], {}, "none")).toEqual([]);
  });

  it("allows nothing beyond the outermost setpoints", () => {
    const most = { largestIntervalCelsius: 140, intervalRule: "as agreed" };
    expect(fieldsOf([300, 440], { ...most, useFromCelsius: 300, useToCelsius: 440 })).toEqual([]);
    expect(fieldsOf([300, 440], { ...most, useFromCelsius: 299, useToCelsius: 440 })).toEqual(["useTo"]);
    expect(fieldsOf([300, 440], { ...most, useFromCelsius: 300, useToCelsius: 441 })).toEqual(["useTo"]);
    expect(fieldsOf([300, 440], { ...most, useFromCelsius: 300, useToCelsius: 441 }, "none")).toEqual([]);
  });

  it("takes setpoints that are exactly as far apart as agreed in °F", () => {
    const line = { ...lineInput, temperatureUnit: "F", intervalChoice: "agreed", largestInterval: "250" };
    const order = (setpoints: string) =>
      RecordOrderInput.safeParse({
        ...orderInput("00000000-0000-4000-8000-000000000001"),
        ruleSet: audited,
        lines: [{ ...line, setpoints }],
      });
    expect(order("700 950 1200").success).toBe(true);
    expect(order("700 951 1200").error?.issues.map(({ path }) => path)).toEqual([["lines", 0, "setpoints"]]);
  });

  it("wants lot and roll of each sensor taken in", () => {
    const known = { serial: "A", build: { lot: "L1", roll: "R1" } };
    expect(decideRuleSetIntake(audited, [known])).toMatchObject({ ok: true });
    for (const [build, empty] of [
      [{}, ["lot", "roll"]],
      [{ lot: "L1" }, ["roll"]],
      [{ roll: "R1" }, ["lot"]],
    ] as const) {
      const decided = decideRuleSetIntake(audited, [known, { serial: "B", build }]);
      expect(decided).toMatchObject({
        ok: false,
        refusal: { message: expect.stringContaining("lot and roll of B.") },
      });
      expect(decided.ok ? [] : Object.keys(decided.refusal.fields ?? {})).toEqual(empty);
    }
    expect(decideRuleSetIntake("none", [{ serial: "B", build: {} }])).toMatchObject({ ok: true });
  });
});

describe("subcontracting", () => {
  const approved = { state: "approved", approvedFrom: "2026-01-01", approvedUntil: "2026-12-31" };
  it("is to whoever is approved on the day", () => {
    expect(isApprovedOn(approved, "2026-01-01")).toBe(true);
    expect(isApprovedOn(approved, "2026-12-31")).toBe(true);
    expect(isApprovedOn(approved, "2027-01-01")).toBe(false);
    expect(isApprovedOn(approved, "2025-12-31")).toBe(false);
    expect(isApprovedOn({ ...approved, state: "suspended" }, "2026-06-01")).toBe(false);
    expect(isApprovedOn({ ...approved, approvedUntil: null }, "2026-06-01")).toBe(false);
    expect(isApprovedOn({ ...approved, approvedFrom: null }, "2026-06-01")).toBe(false);
  });

  it("is refused at the line, for one who is not approved and one who is not here", () => {
    const lines = [{ marks: noMarks }, { marks: { ...noMarks, providerId: "p" } }];
    const provider = { id: "p", name: "Calibrators", isApproved: true };
    expect(decideSubcontracting(lines, [provider])).toMatchObject({ ok: true });
    expect(decideSubcontracting(lines, [{ ...provider, isApproved: false }])).toMatchObject({
      refusal: { fields: { "lines.1.providerId": expect.stringContaining("Calibrators is not approved") } },
    });
    expect(decideSubcontracting(lines, [])).toMatchObject({
      refusal: { fields: { "lines.1.providerId": expect.stringContaining("from the list") } },
    });
  });
});
