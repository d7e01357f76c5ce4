import { describe, expect, it } from "vitest";
import { toleranceIn } from "@/lib/metrology/conformity/tolerance-in";
import { USER_CLASS, type UserLimits, userLimits } from "@/lib/metrology/conformity/user-limits";

const named = {
  id: "order-17",
  title: "Agreed in order 17",
  edition: "2026-03-01",
  source: "invented for the test",
};

const within = (limits: UserLimits, celsius: number) => {
  const set = userLimits(named, "K", limits);
  if (!set.ok) throw new Error(set.problem.message);
  expect(set.value).toMatchObject(named);
  const at = toleranceIn(set.value, "K", USER_CLASS, celsius);
  return at.kind === "defined" ? at.celsius : null;
};

const from0To1200 = { fromCelsius: 0, toCelsius: 1200 } as const;

describe("userLimits", () => {
  it("± one value, in °C or °F", () => {
    const fixed = { kind: "fixed", fixed: 1, ...from0To1200 } as const;
    expect(within({ ...fixed, unit: "°C" }, 1000)).toBe(1);
    expect(within({ ...fixed, unit: "°F" }, 1000)).toBeCloseTo(0.5555555556, 9);
    expect(within({ ...fixed, unit: "°C" }, 1201)).toBeNull();
  });

  it("the larger of a value and a percentage, in the customer's unit", () => {
    const limits = { kind: "fixed-or-percent", fixed: 2, percent: 0.4, ...from0To1200 } as const;
    expect(within({ ...limits, unit: "°C" }, 400)).toBe(2);
    expect(within({ ...limits, unit: "°C" }, 1000)).toBe(4);
    expect(within({ ...limits, unit: "°F" }, 1000)).toBeCloseTo(4.0711111111, 9);
    expect(within({ ...limits, percent: 0, unit: "°C" }, 1000)).toBe(2);
    expect(within({ ...limits, fixed: 0, unit: "°C" }, 1000)).toBe(4);
  });

  it("bands stand alone: between them nothing is interpolated, where two meet the smaller holds", () => {
    const limits = {
      kind: "bands",
      unit: "°C",
      bands: [
        { fromCelsius: 0, toCelsius: 400, fixed: 1.5 },
        { fromCelsius: 400, toCelsius: 800, fixed: 3 },
        { fromCelsius: 900, toCelsius: 1000, fixed: 4 },
      ],
    } as const;
    expect([100, 400, 401, 850, 900, 1001].map((t) => within(limits, t))).toEqual([
      1.5,
      1.5,
      3,
      null,
      4,
      null,
    ]);
  });

  it.each<[string, UserLimits, string]>([
    ["no band", { kind: "bands", unit: "°C", bands: [] }, "too-few"],
    ["not a number", { kind: "fixed", fixed: Number.NaN, unit: "°C", ...from0To1200 }, "not-finite"],
    [
      "an endless range",
      { kind: "fixed", fixed: 1, unit: "°C", fromCelsius: 0, toCelsius: Number.POSITIVE_INFINITY },
      "not-finite",
    ],
    [
      "a range turned round",
      { kind: "fixed", fixed: 1, unit: "°C", fromCelsius: 10, toCelsius: 5 },
      "outside-range",
    ],
    ["zero", { kind: "fixed", fixed: 0, unit: "°C", ...from0To1200 }, "outside-range"],
    ["below zero", { kind: "fixed", fixed: -1, unit: "°C", ...from0To1200 }, "outside-range"],
    [
      "a percentage below zero",
      { kind: "fixed-or-percent", fixed: 2, percent: -0.1, unit: "°C", ...from0To1200 },
      "outside-range",
    ],
  ])("refuses %s", (_, limits, kind) => {
    const refusal = userLimits(named, "K", limits);
    expect(refusal.ok ? null : refusal.problem.kind).toBe(kind);
    expect(refusal.ok ? "" : refusal.problem.message).not.toBe("");
  });

  it("takes a percentage of the same number as the value, and names its class", () => {
    const limits = { kind: "fixed-or-percent", fixed: 2, percent: 2, unit: "°C", ...from0To1200 } as const;
    expect(within(limits, 50)).toBe(2);
    expect(within(limits, 500)).toBe(10);
    expect(USER_CLASS).toBe("agreed");
  });

  it("says which numbers are none", () => {
    const refusal = userLimits(named, "K", { kind: "fixed", fixed: Number.NaN, unit: "°C", ...from0To1200 });
    expect(refusal.ok ? "" : refusal.problem.message).toBe(
      "0, 1200, NaN, 0: a limit needs numbers throughout",
    );
  });

  it("one temperature is a range too", () => {
    expect(within({ kind: "fixed", fixed: 1, unit: "°C", fromCelsius: 1000, toCelsius: 1000 }, 1000)).toBe(1);
  });
});
