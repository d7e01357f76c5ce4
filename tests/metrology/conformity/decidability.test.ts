import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decidability } from "@/lib/metrology/conformity/decidability";
import { decidableClasses } from "@/lib/metrology/conformity/decidable-classes";
import { decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import type { ConformityRule } from "@/lib/metrology/conformity/guard-band";
import { iec60584 } from "@/lib/metrology/conformity/iec-60584-1";

const guarded = { kind: "guarded", guardBandRatio: 1 } as const;
const expected = (expandedCelsius: number) => ({
  standardUncertaintyCelsius: expandedCelsius / 2,
  expandedCelsius,
});

const judge = (tolerance: number, rule: ConformityRule, expanded: number) => {
  const judged = decidability(tolerance, rule, expected(expanded));
  if (!judged.ok) throw new Error(judged.problem.message);
  return judged.value;
};

describe("decidability", () => {
  it("K at 1000 °C, U = 1.8 °C, guarded: class 1 (± 4 °C) is decidable, ± 1 °C is not", () => {
    expect(judge(4, guarded, 1.8)).toEqual({
      kind: "decidable",
      guardBandCelsius: 1.8,
      acceptanceCelsius: 2.2,
      limitExpandedCelsius: 4,
      isLimitIncluded: false,
      limitToleranceCelsius: 1.8,
    });
    expect(judge(1, guarded, 1.8)).toEqual({
      kind: "not-decidable",
      guardBandCelsius: 1.8,
      acceptanceCelsius: null,
      limitExpandedCelsius: 1,
      isLimitIncluded: false,
      limitToleranceCelsius: 1.8,
    });
  });

  it("closes where w reaches the tolerance", () => {
    expect(judge(1.8, guarded, 1.8).kind).toBe("not-decidable");
    expect(judge(1.8 + 2 ** -51, guarded, 1.8).kind).toBe("decidable");
    expect(judge(1, { kind: "guarded", guardBandRatio: 0.5 }, 1.8).acceptanceCelsius).toBeCloseTo(0.1, 12);
    expect(judge(1, { kind: "guarded-binary", guardBandRatio: 0.5 }, 3).limitExpandedCelsius).toBe(2);
  });

  it("simple acceptance asks nothing of U unless it says so", () => {
    expect(judge(1, { kind: "simple" }, 50)).toEqual({
      kind: "decidable",
      guardBandCelsius: 0,
      acceptanceCelsius: 1,
      limitExpandedCelsius: null,
      isLimitIncluded: false,
      limitToleranceCelsius: 0,
    });
    const quarter = { kind: "simple", largestRatio: 0.25 } as const;
    expect(judge(4, quarter, 1)).toEqual({
      kind: "decidable",
      guardBandCelsius: 0,
      acceptanceCelsius: 4,
      limitExpandedCelsius: 1,
      isLimitIncluded: true,
      limitToleranceCelsius: 4,
    });
    expect(judge(4, quarter, 1.001)).toMatchObject({ kind: "not-decidable", acceptanceCelsius: null });
  });

  it("a rule with r = 0 or below always leaves a zone", () => {
    for (const guardBandRatio of [0, -1]) {
      expect(judge(1, { kind: "guarded-binary", guardBandRatio }, 9)).toMatchObject({
        kind: "decidable",
        acceptanceCelsius: 1 - guardBandRatio * 9,
        limitExpandedCelsius: null,
        limitToleranceCelsius: 0,
      });
    }
  });

  // At zero error each tail holds half of the 5 %: 1.96, not 1.645.
  it("by target risk: U = 2·TL/1.96 is the end", () => {
    const rule = { kind: "target-risk", falseAcceptance: 0.05, isBinary: false } as const;
    expect(judge(1, rule, 1).limitExpandedCelsius).toBeCloseTo(2 / 1.959963984540054, 9);
    expect(judge(1.9599, rule, 2).kind).toBe("not-decidable");
    expect(judge(1.96, rule, 2).kind).toBe("decidable");
    expect(judge(1.7, rule, 2).limitToleranceCelsius).toBeCloseTo(1.959963984540054, 9);
    expect(judge(1, rule, 0).limitExpandedCelsius).toBeNull();
  });

  it("says the same as the decision itself, for every U and tolerance", () => {
    const rules = fc.oneof(
      fc.record({
        kind: fc.constantFrom("guarded" as const, "guarded-binary" as const),
        guardBandRatio: fc.double({ min: 0.01, max: 2, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant("simple" as const),
        largestRatio: fc.double({ min: 0.1, max: 2, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant("target-risk" as const),
        falseAcceptance: fc.constantFrom(0.01, 0.05, 0.5),
        isBinary: fc.boolean(),
      }),
    );
    const size = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(rules, size, size, (rule, tolerance, expanded) => {
        const judged = judge(tolerance, rule, expanded);
        const decision = decideConformity({
          errorCelsius: 0,
          toleranceCelsius: tolerance,
          rule,
          ...expected(expanded),
        });
        if (!decision.ok) throw new Error(decision.problem.message);
        expect(judged.kind === "not-decidable").toBe(decision.value.verdict === "not-decidable");
        expect(judged.acceptanceCelsius).toBe(decision.value.acceptanceCelsius);
        const { limitExpandedCelsius: limit } = judged;
        if (limit === null) return;
        expect(judge(tolerance, rule, limit * 0.999).kind).toBe("decidable");
        expect(judge(tolerance, rule, limit * 1.001).kind).toBe("not-decidable");
        expect(judge(judged.limitToleranceCelsius * 1.001, rule, expanded).kind).toBe("decidable");
      }),
    );
  });

  it.each([
    [Number.NaN, guarded, 1, "not-finite"],
    [0, guarded, 1, "outside-range"],
    [-1, guarded, 1, "outside-range"],
    [1, guarded, Number.NaN, "not-finite"],
    [1, { kind: "guarded", guardBandRatio: -1 } as const, 1, "outside-range"],
  ])("refuses a tolerance of %d, rule %o, U = %d", (tolerance, rule, expanded, kind) => {
    const judged = decidability(tolerance, rule, expected(expanded));
    expect(judged.ok ? "" : judged.problem.kind).toBe(kind);
    expect(judged.ok ? "" : judged.problem.message).not.toBe("");
  });
});

describe("decidableClasses", () => {
  it("offers what could be judged: K at 1000 °C", () => {
    const classes = decidableClasses(iec60584, "K", 1000, guarded, expected(1.8));
    expect(classes.ok && classes.value).toEqual([
      { toleranceClass: "1", toleranceCelsius: 4, acceptanceCelsius: 2.2 },
      { toleranceClass: "2", toleranceCelsius: 7.5, acceptanceCelsius: 5.7 },
    ]);
  });

  it("leaves out what is not defined or not decidable", () => {
    const only2 = decidableClasses(iec60584, "K", 1000, guarded, expected(5));
    expect(only2.ok && only2.value.map((one) => one.toleranceClass)).toEqual(["2"]);
    const above = decidableClasses(iec60584, "K", 1100, guarded, expected(1.8));
    expect(above.ok && above.value.map((one) => one.toleranceClass)).toEqual(["2"]);
    for (const type of ["Au/Pt", "constructor"]) {
      const none = decidableClasses(iec60584, type, 500, guarded, expected(0.1));
      expect(none.ok && none.value).toEqual([]);
    }
  });

  it("refuses an uncertainty that is none", () => {
    const refusal = decidableClasses(iec60584, "K", 1000, guarded, expected(Number.NaN));
    expect(refusal.ok ? "" : refusal.problem.kind).toBe("not-finite");
  });
});
