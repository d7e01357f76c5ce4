import { describe, expect, it } from "vitest";
import { decideAcceptance, type ReviewedOrder, reviewOrder } from "@/lib/domain/order/contract-review";
import { LineOptions } from "@/lib/domain/order/options";
import { setpointTolerances } from "@/lib/domain/order/setpoint-tolerances";

const furnaces = [{ name: "Tube furnace 1", minimumCelsius: 300, maximumCelsius: 1200 }];
const at = (...celsius: number[]) => celsius.map((value) => ({ typed: String(value), celsius: value }));
const line = {
  position: 1,
  typeLetter: "K",
  temperatureUnit: "C",
  setpoints: at(300, 1000),
  tolerance: "1",
} as const satisfies ReviewedOrder["lines"][number];
const order: ReviewedOrder = {
  state: "recorded",
  decisionRule: "simple",
  decisionRuleAgreedBy: "Nora North",
  decisionRuleAgreedOn: "2026-03-02",
  lines: [line],
};
const messages = (reviewed: ReviewedOrder, kind: string) =>
  reviewOrder(reviewed, furnaces).flatMap((finding) => (finding.kind === kind ? [finding.message] : []));

describe("contract review", () => {
  it("has nothing to say of a complete order within reach", () => {
    expect(reviewOrder(order, furnaces)).toEqual([]);
    expect(decideAcceptance(order, furnaces, false)).toEqual({ ok: true, value: { told: [] } });
  });

  it("wants the rule agreed: by whom and when (7.1.3)", () => {
    const open = { ...order, decisionRuleAgreedBy: null, decisionRuleAgreedOn: null };
    expect(messages(open, "missing")).toHaveLength(2);
    expect(decideAcceptance(open, furnaces, true)).toMatchObject({ ok: false, refusal: { code: "rule" } });
  });

  it("wants setpoints", () => {
    expect(messages({ ...order, lines: [{ ...line, setpoints: [] }] }, "missing")).toEqual([
      "Line 1 has no setpoints yet.",
    ]);
  });

  it("names what no furnace reaches, and what the class does not define, and asks that the customer be told", () => {
    const far = { ...order, lines: [{ ...line, setpoints: at(200, 300, 1100) }] };
    const notices = messages(far, "notice");
    expect(notices[0]).toContain("Line 1: 200 °C cannot be reached here");
    expect(notices[1]).toContain("no tolerance defined at 1100 °C");
    expect(decideAcceptance(far, furnaces, false)).toMatchObject({
      ok: false,
      refusal: { fields: { toldCustomer: expect.any(String) } },
    });
    expect(decideAcceptance(far, furnaces, true)).toEqual({ ok: true, value: { told: notices } });
    expect(messages(order, "notice")).toEqual([]);
    expect(reviewOrder(order, [])[0]?.message).toContain("no furnace is recorded yet");
  });

  it("tells that of an odd number of pieces one roll comes with one end, under the rule set alone", () => {
    const audited = (quantity: number) =>
      messages({ ...order, ruleSet: "audited-heat-treatment", lines: [{ ...line, quantity }] }, "notice");
    expect(audited(8)).toEqual([]);
    expect(audited(7)).toEqual([expect.stringMatching(/^Line 1: .*7 sensors are ordered: of one roll/)]);
    expect(messages({ ...order, ruleSet: "none", lines: [{ ...line, quantity: 7 }] }, "notice")).toEqual([]);
    const reported = (report: "per-sensor" | "per-lot") => {
      const options = LineOptions.parse({ report });
      const lines = [{ ...line, quantity: 8, options }];
      return messages({ ...order, ruleSet: "audited-heat-treatment", lines }, "notice");
    };
    expect(reported("per-lot")).toEqual([]);
    expect(reported("per-sensor")).toEqual([expect.stringContaining("on one certificate for the lot")]);
  });

  it("says that a class without a rule brings no statement", () => {
    expect(messages({ ...order, decisionRule: "none" }, "notice")[0]).toContain("no statement of conformity");
  });

  it.each(["accepted", "completed", "cancelled"] as const)("refuses an order that is %s", (state) => {
    expect(decideAcceptance({ ...order, state }, furnaces, true)).toMatchObject({
      ok: false,
      refusal: { code: "wrong-state" },
    });
  });
});

describe("what a class says at each setpoint", () => {
  it("is the larger of the fixed and the growing part, in the customer's unit (IEC 60584-1:2013)", () => {
    const said = (typeLetter: "K" | "S", tolerance: "1" | "2", unit: "C" | "F", ...celsius: number[]) =>
      setpointTolerances({ typeLetter, tolerance, temperatureUnit: unit, setpoints: at(...celsius) }).map(
        (point) => point.tolerance,
      );
    expect(said("K", "1", "C", 300, 1000, 1100)).toEqual(["± 1.50 °C", "± 4.00 °C", "no tolerance defined"]);
    expect(said("S", "2", "C", 600, 1000)).toEqual(["± 1.50 °C", "± 2.50 °C"]);
    expect(said("K", "1", "F", 1000)).toEqual(["± 7.20 °F"]);
  });

  it("shows the customer's °F and what it is in °C", () => {
    const [point] = setpointTolerances({
      typeLetter: "K",
      tolerance: "none",
      temperatureUnit: "F",
      setpoints: [{ typed: "600", celsius: 2840 / 9 }],
    });
    expect(point).toEqual({
      setpoint: "600 °F",
      celsius: "315.556 °C",
      tolerance: "",
      state: "no-class",
      reason: "",
    });
  });
});
