import { describe, expect, it } from "vitest";
import { assessIntake, type MeasuredAtIntake } from "@/lib/domain/intake/assess-intake";
import { expectedLoop } from "@/lib/domain/intake/expected-loop";
import { failedChecks, readFindings } from "@/lib/domain/intake/findings";
import { defaultIntakePolicy, IntakePolicy, readIntakePolicy } from "@/lib/domain/intake/policy";

const sensor = (more: Partial<MeasuredAtIntake> = {}): MeasuredAtIntake => ({
  loopResistanceOhm: null,
  insulationMegaohm: null,
  polarity: "ok",
  typeCheck: "ok",
  grounding: "ungrounded",
  build: {},
  ...more,
});
const verdictOf = (check: string, more: Partial<MeasuredAtIntake>, type = "K") =>
  assessIntake(defaultIntakePolicy, type, sensor(more)).find((finding) => finding.check === check)?.verdict;

describe("the expected loop resistance", () => {
  it("is resistivity × length ÷ cross section, reckoned by hand for 1 m of 0.5 mm type K", () => {
    // 1.00 µΩ·m × 1 m ÷ (π/4 × 0.25 mm²) = 1e-6 ÷ 1.9635e-7 = 5.093 Ω
    const expected = expectedLoop(defaultIntakePolicy, "K", { wireMillimetre: 0.5, lengthMillimetre: 1000 });
    expect(expected?.ohm).toBeCloseTo(5.093, 3);
    expect(expected?.isLeast).toBe(false);
  });

  it("is unknown without wire, length or a figure for the type, also for a made-up one", () => {
    const whole = { wireMillimetre: 0.5, lengthMillimetre: 1000 };
    expect(expectedLoop(defaultIntakePolicy, "K", { wireMillimetre: 0.5 })).toBeNull();
    expect(expectedLoop(defaultIntakePolicy, "K", { lengthMillimetre: 1000 })).toBeNull();
    for (const type of ["C", "constructor"])
      expect(expectedLoop(defaultIntakePolicy, type, whole)).toBeNull();
  });
});

describe("a check against the policy", () => {
  const build = { wireMillimetre: 0.5, lengthMillimetre: 1000 };
  it.each([
    [null, build, "not-checked"],
    [5, {}, "no-limit"],
    [1001, {}, "outside"],
    [4.08, build, "within"],
    [4.07, build, "outside"],
    [6.11, build, "within"],
    [6.12, build, "outside"],
    // A lead adds what nobody stated: only the lower bound holds.
    [60, { ...build, leadMillimetre: 5000 }, "within"],
    [4, { ...build, leadMillimetre: 5000 }, "outside"],
  ] as const)("of a loop of %s Ω with %o is %s", (loopResistanceOhm, made, verdict) => {
    expect(verdictOf("loop-resistance", { loopResistanceOhm, build: made })).toBe(verdict);
  });

  it.each([
    [null, "ungrounded", "not-checked"],
    [100, "ungrounded", "within"],
    [99.9, "not-checked", "outside"],
    [0.1, "grounded", "no-limit"],
    [0.1, "exposed", "no-limit"],
  ] as const)("of an insulation of %s MΩ, junction %s, is %s", (insulationMegaohm, grounding, verdict) => {
    expect(verdictOf("insulation", { insulationMegaohm, grounding })).toBe(verdict);
  });

  it("of insulation asks by what it went through before", () => {
    const policy = IntakePolicy.parse({ leastInsulationMegaohm: { new: 1000, used: 20, notKnown: 100 } });
    const at50 = (isUsed?: boolean) =>
      assessIntake(
        policy,
        "K",
        sensor({ insulationMegaohm: 50, build: isUsed === undefined ? {} : { isUsed } }),
      )[1]?.verdict;
    expect([at50(true), at50(false), at50()]).toEqual(["within", "outside", "outside"]);
  });

  it("of polarity and type goes by what was seen", () => {
    expect(verdictOf("polarity", { polarity: "reversed" })).toBe("outside");
    expect(verdictOf("polarity", { polarity: "not-checked" })).toBe("not-checked");
    expect(verdictOf("type", { typeCheck: "other-type" })).toBe("outside");
    expect(verdictOf("type", { typeCheck: "not-checked" })).toBe("not-checked");
    const all = assessIntake(
      defaultIntakePolicy,
      "K",
      sensor({ polarity: "reversed", typeCheck: "other-type" }),
    );
    expect(failedChecks(all)).toEqual(["polarity is reversed", "it reads as another type than ordered"]);
    expect(readFindings(JSON.stringify(all))).toEqual(all);
  });
});

describe("the policy", () => {
  it("is the default where nothing is set, and refuses what is no limit", () => {
    expect(readIntakePolicy("{}")).toEqual(defaultIntakePolicy);
    for (const wrong of [
      { loopTolerancePercent: 0 },
      { largestLoopOhm: -1 },
      { leastInsulationMegaohm: { new: 0, used: 1, notKnown: 1 } },
      { pairResistivityMicroohmMetre: { K: 1 } },
      { anything: 1 },
    ])
      expect(IntakePolicy.safeParse(wrong).success).toBe(false);
  });
});
