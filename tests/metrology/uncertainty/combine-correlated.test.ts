import { describe, expect, it } from "vitest";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { type Correlation, correlationFactor } from "@/lib/metrology/uncertainty/correlation-factor";
import { outcomeValue } from "./outcome-value";

const line = (effect: number, degreesOfFreedom: number | null = null) => ({ effect, degreesOfFreedom });
const pair = (first: number, second: number, coefficient: number): Correlation => ({
  first,
  second,
  coefficient,
});

describe("combineCorrelated", () => {
  it("is combine, bit for bit, where nothing is correlated", () => {
    const effects = [line(0.1, 7), line(-0.27), line(1.3e-3, 2), line(0.019, 11), line(0)];
    const { shares, ...combined } = outcomeValue(combineCorrelated(effects, []));
    expect(combined).toEqual(combine(effects));
    expect(shares.reduce((a, b) => a + b)).toBeCloseTo(1, 15);
    expect(shares[1]).toBeCloseTo((0.27 / combined.standardUncertainty) ** 2, 14);
    const { shares: _, ...zero } = outcomeValue(combineCorrelated(effects, [pair(0, 1, 0)]));
    expect(zero).toEqual(combine(effects));
  });

  it("adds fully correlated effects as they are, and lets opposite ones cancel", () => {
    const added = outcomeValue(combineCorrelated([line(3), line(4)], [pair(0, 1, 1)]));
    expect(added.standardUncertainty).toBe(7);
    // Halves of the covariance 2·3·4 on each: 9 + 12 and 16 + 12, of 49.
    expect(added.shares).toEqual([21 / 49, 28 / 49]);
    expect(outcomeValue(combineCorrelated([line(3), line(-4)], [pair(1, 0, 1)])).standardUncertainty).toBe(1);
    const none = outcomeValue(combineCorrelated([line(0.3, 5), line(-0.3, 5)], [pair(0, 1, 1)]));
    expect(none).toEqual({ standardUncertainty: 0, degreesOfFreedom: null, shares: [0, 0] });
  });

  // JCGM 100:2008, 5.2.2, example (also F.1.2.3): ten 1 kΩ resistors in series, each compared with the same
  // 1 kΩ standard, u(R_s) = 100 mΩ, r = 1: u_c = 1 Ω, where the independent sum would give 0.32 Ω.
  it("gives 1 Ω for the ten resistors of JCGM 100:2008, 5.2.2", () => {
    const effects = Array.from({ length: 10 }, () => line(0.1));
    const all = effects.flatMap((_, i) => effects.flatMap((__, j) => (i < j ? [pair(i, j, 1)] : [])));
    expect(outcomeValue(combineCorrelated(effects, all)).standardUncertainty).toBeCloseTo(1, 14);
    expect(combine(effects).standardUncertainty.toFixed(2)).toBe("0.32");
  });

  it("takes a chain of correlated inputs for one part with the fewest ν", () => {
    const effects = [line(1, 9), line(2, 5), line(2, 30), line(1.5, 4), line(0, 1)];
    const { degreesOfFreedom, standardUncertainty } = outcomeValue(
      combineCorrelated(effects, [pair(2, 1, 0.5), pair(0, 1, 0.4), pair(4, 1, 0.1)]),
    );
    const chain = 1 + 4 + 4 + 2 * (0.5 * 4 + 0.4 * 2);
    expect(standardUncertainty ** 2).toBeCloseTo(chain + 2.25, 12);
    // Input 4 acts with nothing, so its single ν is not that of the chain.
    expect(degreesOfFreedom).toBeCloseTo((chain + 2.25) ** 2 / (chain ** 2 / 5 + 2.25 ** 2 / 4), 12);
  });

  it("takes the finite ν of a group whose other member has infinitely many", () => {
    const effects = [line(1), line(2, 6)];
    const { degreesOfFreedom } = outcomeValue(combineCorrelated(effects, [pair(0, 1, 0.5)]));
    expect(degreesOfFreedom).toBeCloseTo(6, 12);
  });

  it("keeps infinite ν where no member has a finite one", () => {
    const { degreesOfFreedom } = outcomeValue(combineCorrelated([line(1), line(2)], [pair(0, 1, -0.3)]));
    expect(degreesOfFreedom).toBeNull();
  });

  it.each([
    ["outside-range", [pair(0, 2, 0.5)]],
    ["outside-range", [pair(-1, 0, 0.5)]],
    ["outside-range", [pair(0, 0.5, 0.5)]],
    ["outside-range", [pair(0, Number.NaN, 0.5)]],
    ["outside-range", [pair(1, 1, 1)]],
    ["outside-range", [pair(0, 1, 1.0000001)]],
    ["outside-range", [pair(0, 1, Number.NaN)]],
    ["outside-range", [pair(0, 1, 0.2), pair(1, 0, 0.3)]],
  ])("refuses as %s %j", (kind, correlations) => {
    const outcome = combineCorrelated([line(1), line(2)], correlations);
    expect(outcome.ok ? "found" : outcome.problem.kind).toBe(kind);
    if (!outcome.ok) expect(outcome.problem.message).not.toBe("");
  });

  it("refuses what is no number, and ν that is none", () => {
    const kindOf = (effects: Parameters<typeof combineCorrelated>[0]): string => {
      const outcome = combineCorrelated(effects, []);
      if (!outcome.ok) expect(outcome.problem.message).toMatch(/input \d/i);
      return outcome.ok ? "found" : outcome.problem.kind;
    };
    expect(kindOf([line(1), line(Number.NaN)])).toBe("not-finite");
    expect(kindOf([line(Number.POSITIVE_INFINITY)])).toBe("not-finite");
    for (const nu of [0, -1, Number.NaN]) expect(kindOf([line(1, nu)])).toBe("outside-range");
  });

  it("lets NaN through combine, and never as infinitely many ν", () => {
    expect(combine([line(Number.NaN, 3)])).toEqual({
      standardUncertainty: Number.NaN,
      degreesOfFreedom: Number.NaN,
    });
    expect(combine([line(1, Number.NaN)]).degreesOfFreedom).toBeNaN();
  });
});

describe("correlationFactor", () => {
  const product = (rows: readonly Float64Array[], i: number, j: number): number =>
    [...(rows[i] ?? [])].reduce((total, x, k) => total + x * (rows[j]?.[k] ?? 0), 0);

  it("splits the matrix: L·Lᵀ = R, for the correlated inputs alone", () => {
    const given = [pair(1, 3, 0.6), pair(3, 4, -0.2), pair(1, 4, 0.1)];
    const { inputs, rows, rank } = outcomeValue(correlationFactor(6, given));
    expect(inputs).toEqual([1, 3, 4]);
    expect(rank).toBe(3);
    for (const { first, second, coefficient } of given) {
      expect(product(rows, inputs.indexOf(first), inputs.indexOf(second))).toBeCloseTo(coefficient, 14);
    }
    for (const i of [0, 1, 2]) expect(product(rows, i, i)).toBeCloseTo(1, 14);
  });

  it("keeps the inputs in their order, however the pairs are named", () => {
    const { inputs } = outcomeValue(correlationFactor(12, [pair(10, 2, 0.1), pair(5, 2, 0.2)]));
    expect(inputs).toEqual([2, 5, 10]);
  });

  it("stands r = ±1, with one column for what is one quantity", () => {
    const { rows, rank } = outcomeValue(
      correlationFactor(3, [pair(0, 1, 1), pair(0, 2, -1), pair(1, 2, -1)]),
    );
    expect(rank).toBe(1);
    expect(rows.map((row) => [...row])).toEqual([[1], [1], [-1]]);
    expect(outcomeValue(correlationFactor(3, [])).rank).toBe(0);
  });

  it.each([
    ["two that equal a third and differ", [pair(0, 1, 1), pair(0, 2, 1), pair(1, 2, 0.5)]],
    ["a missing pair of a full chain", [pair(0, 1, 1), pair(1, 2, 1)]],
    ["three that all oppose each other", [pair(0, 1, -0.6), pair(0, 2, -0.6), pair(1, 2, -0.6)]],
  ])("refuses %s", (_, correlations) => {
    const outcome = correlationFactor(3, correlations);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) {
      expect(outcome.problem.kind).toBe("outside-range");
      expect(outcome.problem.message).toContain("contradict");
    }
  });
});
