import { describe, expect, it } from "vitest";
import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { type ConformityInput, decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import { tolerance } from "@/lib/metrology/conformity/tolerance";
import { jcgm106Examples, specificRisk } from "../vectors/jcgm-106";
import { toleranceVectors } from "../vectors/tolerances";

describe("tolerance, IEC 60584-1:2013", () => {
  it.each(toleranceVectors)("type %s class %s at %d °C: %d", (type, toleranceClass, celsius, expected) => {
    const result = tolerance(type, toleranceClass, celsius);
    if (expected === null) expect(result.kind).toBe("not-defined");
    else expect(result.kind === "defined" && result.celsius).toBeCloseTo(expected, 12);
  });

  it("is never the fixed part's fraction: 0.75 % of 333 °C is 2.4975, and class 2 is 2.5", () => {
    expect(tolerance("K", "2", 333)).toEqual({ kind: "defined", celsius: 2.5 });
  });

  it("says where the class ends", () => {
    const result = tolerance("K", "1", 1100);
    expect(result.kind === "not-defined" && result.reason).toContain(
      "from -40 °C to 1000 °C, not at 1100 °C",
    );
    const none = tolerance("R", "3", 500);
    expect(none.kind === "not-defined" && none.reason).toContain("no class 3 for type R");
  });

  it("never falls as the temperature rises above zero", () => {
    for (const type of ["K", "N", "R", "S"] as const) {
      let before = 0;
      for (let t = 0; t <= 1000; t += 1) {
        const result = tolerance(type, "2", t);
        if (result.kind !== "defined") throw new Error(`${type} ${t}`);
        expect(result.celsius).toBeGreaterThanOrEqual(before);
        before = result.celsius;
      }
    }
  });

  it("has none for a temperature that is not a number", () => {
    expect(tolerance("K", "2", Number.NaN).kind).toBe("not-defined");
  });
});

describe("conformanceProbability, JCGM 106:2012", () => {
  it.each(jcgm106Examples)(
    "7.3.3 $name",
    ({ value, standardUncertainty, lower, upper, published, recomputed }) => {
      const p = conformanceProbability(value, standardUncertainty, lower, upper);
      expect(p.toFixed(2)).toBe(published);
      expect(p).toBeCloseTo(recomputed, 8);
    },
  );

  it.each(specificRisk)("risk at the acceptance limit with w = %d·U", (ratio, risk) => {
    // Tolerance wide against u, so that one tail is left; U = 2u.
    const u = 1;
    const limit = 1000;
    const p = 1 - conformanceProbability(limit - ratio * 2 * u, u, -limit, limit);
    expect(Math.abs(p / risk - 1)).toBeLessThan(0.005);
  });

  it("counts both tails when the tolerance is narrow", () => {
    expect(conformanceProbability(0, 1, -1, 1)).toBeCloseTo(0.6826894921, 9);
    expect(conformanceProbability(1, 1, -1, 1)).toBeCloseTo(0.4772498681, 9);
  });

  it("is the same on both sides, and keeps its digits far out", () => {
    for (const value of [0.3, 2.5, 9]) {
      expect(conformanceProbability(value, 1, -2, 2)).toBe(conformanceProbability(-value, 1, -2, 2));
    }
    expect(conformanceProbability(12, 1, -2, 2)).toBeGreaterThan(0);
    expect(conformanceProbability(-12, 1, -2, 2)).toBeCloseTo(7.619853e-24, 28);
  });

  it("with no uncertainty is certain", () => {
    expect(conformanceProbability(2, 0, -2, 2)).toBe(1);
    expect(conformanceProbability(2.1, 0, -2, 2)).toBe(0);
  });
});

function decide(errorCelsius: number, change: Partial<ConformityInput> = {}) {
  const decision = decideConformity({
    errorCelsius,
    standardUncertaintyCelsius: 0.25,
    expandedCelsius: 0.5,
    toleranceCelsius: 2.5,
    rule: { kind: "guarded", guardBandRatio: 1 },
    ...change,
  });
  if (!decision.ok) throw new Error(decision.problem.message);
  return decision.value;
}

describe("decideConformity, guarded (ILAC-G8:09/2019, 4.2.3)", () => {
  // TL = 2.5, w = 0.5: limits at 2.0, 2.5 and 3.0, each with the next number beyond it.
  it.each([
    [0, "pass"],
    [2, "pass"],
    [2 + 2 ** -51, "conditional-pass"],
    [2.5, "conditional-pass"],
    [2.5 + 2 ** -51, "conditional-fail"],
    [3, "conditional-fail"],
    [3 + 2 ** -51, "fail"],
    [10, "fail"],
  ] as const)("an error of %d °C: %s, on either side", (error, verdict) => {
    expect(decide(error).verdict).toBe(verdict);
    expect(decide(-error).verdict).toBe(verdict);
  });

  it("has its acceptance limit at TL − r·U", () => {
    expect(decide(0).acceptanceCelsius).toBe(2);
    expect(decide(0, { rule: { kind: "guarded", guardBandRatio: 0.83 } }).acceptanceCelsius).toBeCloseTo(
      2.085,
      12,
    );
  });

  it("decides nothing when the acceptance zone is empty", () => {
    for (const expandedCelsius of [2.5, 3]) {
      const decision = decide(0, { expandedCelsius });
      expect(decision.verdict).toBe("not-decidable");
      expect(decision.acceptanceCelsius).toBeNull();
      expect(decision.probability).toBeGreaterThan(0.99);
    }
    expect(decide(0, { expandedCelsius: 2.49 }).verdict).toBe("pass");
  });

  it("at ratio 0 passes and fails at the tolerance limit", () => {
    const rule = { kind: "guarded", guardBandRatio: 0 } as const;
    expect(decide(2.5, { rule }).verdict).toBe("pass");
    expect(decide(2.6, { rule }).verdict).toBe("fail");
  });
});

describe("decideConformity, simple (ILAC-G8:09/2019, 4.2.1)", () => {
  const rule = { kind: "simple" } as const;

  it.each([
    [2.5, "pass"],
    [-2.5, "pass"],
    [2.5 + 2 ** -51, "fail"],
    [-2.6, "fail"],
  ] as const)("an error of %d °C: %s", (error, verdict) => {
    expect(decide(error, { rule }).verdict).toBe(verdict);
  });

  it("shares the risk: half at the limit", () => {
    expect(decide(2.5, { rule }).probability).toBeCloseTo(0.5, 10);
  });
});
