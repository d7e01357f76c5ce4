import { describe, expect, it } from "vitest";
import {
  decideAcceptance,
  decideChangedReview,
  type ReviewedOrder,
  reviewOrder,
} from "@/lib/domain/order/contract-review";
import { noMarks } from "@/lib/domain/order/line-marks";
import { noFurnaceReaches } from "@/lib/domain/order/not-done";
import { LineOptions } from "@/lib/domain/order/options";
import { setpointTolerances } from "@/lib/domain/order/setpoint-tolerances";

const furnaces = [{ name: "Tube furnace 1", minimumCelsius: 300, maximumCelsius: 1200 }];
const means = { furnaces, points: [] };
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
    expect(decideAcceptance(order, means, false)).toEqual({ ok: true, value: { told: [] } });
  });

  it("wants the rule agreed: by whom and when (7.1.3)", () => {
    const open = { ...order, decisionRuleAgreedBy: null, decisionRuleAgreedOn: null };
    expect(messages(open, "missing")).toHaveLength(2);
    expect(decideAcceptance(open, means, true)).toMatchObject({ ok: false, refusal: { code: "rule" } });
  });

  it("wants setpoints", () => {
    expect(messages({ ...order, lines: [{ ...line, setpoints: [] }] }, "missing")).toEqual([
      "Line 1 has no setpoints yet.",
    ]);
  });

  it("names what the class does not define, and asks that the customer be told", () => {
    const far = { ...order, lines: [{ ...line, setpoints: at(300, 1100) }] };
    const notices = messages(far, "notice");
    expect(notices).toEqual([expect.stringContaining("no tolerance defined at 1100 °C")]);
    expect(decideAcceptance(far, means, false)).toMatchObject({
      ok: false,
      refusal: { fields: { toldCustomer: expect.any(String) } },
    });
    expect(decideAcceptance(far, means, true)).toEqual({ ok: true, value: { told: notices } });
    expect(messages(order, "notice")).toEqual([]);
  });

  it("refuses what no furnace reaches, told or not, and says what would do", () => {
    const far = { ...order, lines: [{ ...line, setpoints: at(200, 300, 1000) }] };
    const [gap = ""] = messages(far, "missing");
    expect(gap).toMatch(/^Line 1: 200 °C cannot be reached here; the furnaces reach 300 to 1200 °C/);
    expect(gap).toMatch(/Another setpoint, a provider .* or an order without the point/);
    const refused = { ok: false, refusal: { fields: { "lines.0.setpoints": gap } } };
    expect(decideAcceptance(far, means, true)).toMatchObject(refused);
    expect(decideChangedReview(far, order, means, true)).toMatchObject(refused);
    // What it was accepted with stops no other change, and is told again.
    expect(decideChangedReview(far, far, means, false)).toMatchObject({
      refusal: { fields: { toldCustomer: expect.any(String) } },
    });
    expect(decideChangedReview(far, far, means, true)).toEqual({ ok: true, value: { told: [gap] } });
    expect(reviewOrder(order, [])[0]).toMatchObject({
      kind: "notice",
      message: expect.stringContaining("no furnace is recorded yet"),
    });
  });

  it("does not judge by the own furnaces what a provider does, or what is done at the customer’s site", () => {
    const elsewhere = (marks: object) =>
      messages(
        { ...order, lines: [{ ...line, setpoints: at(300, 1300), marks: { ...noMarks, ...marks } }] },
        "missing",
      );
    expect(elsewhere({})).toHaveLength(1);
    expect(elsewhere({ providerId: "p" })).toEqual([]);
    expect(elsewhere({ performedAt: "customer-site", siteAddress: "Works Road" })).toEqual([]);
  });

  it("tells of each point that cannot be done as things stand, with the reason, those of a reason together", () => {
    const point = (setpoint: string, why: string) =>
      ({ position: 1, setpoint, why, can: why ? "no" : "yes" }) as const;
    const lapsed = "No reference in service is certified at this temperature.";
    const points = [
      point("1000 °C", ""),
      point("1160 °C", lapsed),
      point("1200 °C", lapsed),
      // The review refuses this one by itself.
      point("1300 °C", noFurnaceReaches),
      { ...point("500 °C", lapsed), can: "elsewhere" as const },
    ];
    expect(decideAcceptance(order, { furnaces, points }, false)).toMatchObject({ ok: false });
    expect(decideAcceptance(order, { furnaces, points }, true)).toEqual({
      ok: true,
      value: {
        told: [
          expect.stringMatching(/^Line 1: 1160 °C, 1200 °C cannot be done as things stand. No reference in/),
        ],
      },
    });
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
    expect(decideAcceptance({ ...order, state }, means, true)).toMatchObject({
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
