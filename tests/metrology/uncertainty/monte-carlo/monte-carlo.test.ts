import { describe, expect, it } from "vitest";
import type { Outcome } from "@/lib/metrology/outcome";
import { coverageByMonteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/coverage-by-monte-carlo";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import {
  type MonteCarloOptions,
  monteCarlo,
  monteCarloSteps,
} from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import { numericalTolerance } from "@/lib/metrology/uncertainty/monte-carlo/numerical-tolerance";
import type { Sampler } from "@/lib/metrology/uncertainty/monte-carlo/sampler";
import { summarize } from "@/lib/metrology/uncertainty/monte-carlo/summarize";
import { validateGum } from "@/lib/metrology/uncertainty/monte-carlo/validate-gum";
import { outcomeValue } from "../outcome-value";

const kindOf = (outcome: Outcome<unknown>): string => (outcome.ok ? "found" : outcome.problem.kind);
const normal = (standardDeviation: number): Sampler =>
  outcomeValue(linearSampler(5, [{ sensitivity: -1, distribution: { kind: "normal", standardDeviation } }]));
const fixed = (count: number): MonteCarloOptions => ({
  seed: 1,
  stream: 0,
  probability: 0.95,
  trials: { kind: "fixed", count },
});
const adaptive = (divisor: number): MonteCarloOptions => ({
  ...fixed(0),
  trials: { kind: "adaptive", digits: 2, divisor },
});

describe("monteCarlo", () => {
  it("gives the same bits for the same seed and stream, whatever the workspace held", () => {
    const one = outcomeValue(monteCarlo(normal(1), fixed(20_000), new Float64Array(20_000)));
    const used = new Float64Array(50_000).fill(9);
    expect(outcomeValue(monteCarlo(normal(1), fixed(20_000), used))).toEqual(one);
    const other = outcomeValue(monteCarlo(normal(1), { ...fixed(20_000), stream: 1 }, used));
    expect(other.estimate).not.toBe(one.estimate);
    expect(one).toMatchObject({ trials: 20_000, seed: 1, stream: 0, probability: 0.95, isSettled: true });
  });

  it("reports how far it is, and can be left", () => {
    const steps = monteCarloSteps(normal(1), fixed(150_000), new Float64Array(150_000));
    expect(steps.next()).toEqual({ done: false, value: { trials: 65_536 } });
    expect(steps.next()).toEqual({ done: false, value: { trials: 131_072 } });
    expect(steps.next().done).toBe(true);
    const left = monteCarloSteps(normal(1), adaptive(1), new Float64Array(150_000));
    expect(left.next()).toEqual({ done: false, value: { trials: 10_000 } });
    expect(left.return(outcomeLeft).done).toBe(true);
  });

  it("stops when the results stand still, and later where more is asked", () => {
    const workspace = new Float64Array(1_000_000);
    const soon = outcomeValue(monteCarlo(normal(1), adaptive(1), workspace));
    const later = outcomeValue(monteCarlo(normal(1), adaptive(5), workspace));
    expect(soon.isSettled && later.isSettled).toBe(true);
    expect(soon.trials % 10_000).toBe(0);
    expect(soon.trials).toBeGreaterThanOrEqual(20_000);
    expect(later.trials).toBeGreaterThan(soon.trials);
    // u is 1.0: δ = 0.05, and 0.01 for a fifth of it.
    expect(Math.abs(later.symmetric.high - 5 - 1.96)).toBeLessThan(0.02);
    expect(Math.abs(later.standardUncertainty - 1)).toBeLessThan(0.01);
  });

  it("says so when the workspace is full first", () => {
    const full = outcomeValue(monteCarlo(normal(1), adaptive(100), new Float64Array(45_000)));
    expect(full).toMatchObject({ trials: 40_000, isSettled: false });
  });

  it("takes larger blocks for a probability close to one (JCGM 101:2008, 7.9.4)", () => {
    const { trials } = outcomeValue(
      monteCarlo(normal(1), { ...adaptive(1), probability: 0.9975 }, new Float64Array(400_000)),
    );
    expect(trials % 40_000).toBe(0);
  });

  it("settles at once on a result without uncertainty", () => {
    const result = outcomeValue(monteCarlo(normal(0), adaptive(1), new Float64Array(30_000)));
    expect(result).toMatchObject({ estimate: 5, standardUncertainty: 0, trials: 20_000, isSettled: true });
    expect(result.shortest).toEqual({ low: 5, high: 5 });
  });

  it("refuses what it cannot do", () => {
    const room = new Float64Array(30_000);
    expect(kindOf(monteCarlo(normal(1), fixed(30_001), room))).toBe("too-few");
    expect(kindOf(monteCarlo(normal(1), fixed(Number.NaN), room))).toBe("too-few");
    expect(kindOf(monteCarlo(normal(1), fixed(0), room))).toBe("too-few");
    expect(kindOf(monteCarlo(normal(1), adaptive(1), room.subarray(0, 19_999)))).toBe("too-few");
    const broken: Sampler = (_, values, from, to) => {
      values.fill(1, from, to);
      values[to - 1] = Number.NaN;
    };
    expect(kindOf(monteCarlo(broken, fixed(1000), room))).toBe("not-finite");
    expect(kindOf(monteCarlo(broken, adaptive(1), room))).toBe("not-finite");
    expect(kindOf(monteCarlo(normal(1), { ...adaptive(1), probability: 1 }, room))).toBe("too-few");
  });
});

const outcomeLeft = { ok: false, problem: { kind: "not-applicable", message: "left" } } as const;

describe("summarize", () => {
  it("takes the ends of JCGM 101:2008, 7.7.3 and 7.7.4 from the ordered trials", () => {
    // 1 … 100, out of order: p = 0.9 gives q = 90, r = 5: from the 5th to the 95th.
    const values = Float64Array.from({ length: 100 }, (_, i) => ((i * 37) % 100) + 1);
    const { symmetric, shortest, estimate, standardUncertainty } = outcomeValue(summarize(values, 0.9));
    expect(symmetric).toEqual({ low: 5, high: 95 });
    expect(shortest).toEqual({ low: 1, high: 91 });
    expect(estimate).toBe(50.5);
    expect(standardUncertainty).toBeCloseTo(Math.sqrt((100 * 101) / 12), 12);
  });

  it("takes the next whole number where pM and (M − q)/2 are none", () => {
    // M = 25, p = 0.95: pM = 23.75, q = 24; (25 − 24)/2 = 0.5, r = 1.
    const values = Float64Array.from({ length: 25 }, (_, i) => 25 - i);
    expect(outcomeValue(summarize(values, 0.95)).symmetric).toEqual({ low: 1, high: 25 });
  });

  it("finds the shortest interval of a skewed distribution at its dense end", () => {
    const values = Float64Array.from({ length: 10_000 }, (_, i) => ((i + 0.5) / 10_000) ** 3);
    const { shortest, symmetric } = outcomeValue(summarize(values, 0.95));
    expect(shortest.low).toBeCloseTo(0, 9);
    expect(shortest.high).toBeCloseTo(0.95 ** 3, 3);
    expect(symmetric.low).toBeCloseTo(0.025 ** 3, 5);
    expect(symmetric.high).toBeCloseTo(0.975 ** 3, 3);
  });

  it.each([
    ["outside-range", [1, 2, 3], 0.5],
    ["outside-range", [1, 2, 3], 1],
    ["outside-range", [1, 2, 3], Number.NaN],
    ["too-few", [], 0.95],
    ["too-few", [1], 0.6],
    ["too-few", [1, 2, 3], 0.95],
    ["not-finite", [1, 2, Number.POSITIVE_INFINITY], 0.6],
    ["not-finite", [1, 2, Number.NaN], 0.6],
  ])("is %s for %j at %d", (kind, values, probability) => {
    expect(kindOf(summarize(Float64Array.from(values), probability))).toBe(kind);
  });
});

describe("numericalTolerance", () => {
  // JCGM 101:2008, 7.9.2, examples of the rule: 0.000 35 with two digits is 35·10⁻⁵; 2 with one digit is 2·10⁰.
  it.each([
    [0.00035, 2, 0.000005],
    [2, 1, 0.5],
    [0.0539, 1, 0.005],
    [9.96, 2, 0.5],
    [0.996, 2, 0.05],
    [123, 2, 5],
  ] as const)("of %d with %i digits is %d", (u, digits, expected) => {
    expect(outcomeValue(numericalTolerance(u, digits))).toBe(expected);
  });

  it("has none for zero, less and NaN", () => {
    expect(kindOf(numericalTolerance(0, 2))).toBe("not-applicable");
    expect(kindOf(numericalTolerance(-1, 2))).toBe("not-applicable");
    expect(kindOf(numericalTolerance(Number.NaN, 2))).toBe("not-finite");
  });
});

describe("validateGum", () => {
  const gum = { estimate: 10, standardUncertainty: 1, expanded: 2 };

  it("allows δ at either end and no more", () => {
    const isValid = (low: number, high: number): boolean =>
      outcomeValue(validateGum(gum, { low, high }, 2)).isValid;
    expect(isValid(8.049, 11.951)).toBe(true);
    expect(isValid(8.051, 12)).toBe(false);
    expect(isValid(8, 12.051)).toBe(false);
    expect(isValid(Number.NaN, 12)).toBe(false);
  });

  it("hands on that zero has no digits", () => {
    const zero = { ...gum, standardUncertainty: 0 };
    expect(kindOf(validateGum(zero, { low: 1, high: 2 }, 2))).toBe("not-applicable");
  });
});

describe("coverageByMonteCarlo", () => {
  it("reaches the farther end of the interval", () => {
    const result = outcomeValue(monteCarlo(normal(2), fixed(100_000), new Float64Array(100_000)));
    const { low, high } = result.symmetric;
    const coverage = outcomeValue(coverageByMonteCarlo(result, 5, 2));
    expect(coverage).toEqual({
      kind: "monte-carlo",
      factor: Math.max(5 - low, high - 5) / 2,
      probability: 0.95,
      trials: 100_000,
      seed: 1,
    });
    expect(outcomeValue(coverageByMonteCarlo(result, 4, 2)).factor).toBe((high - 4) / 2);
    expect(kindOf(coverageByMonteCarlo(result, 5, 0))).toBe("not-applicable");
    expect(kindOf(coverageByMonteCarlo(result, 5, Number.NaN))).toBe("not-applicable");
  });
});
