import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  conformanceProbability,
  nonconformanceProbability,
} from "@/lib/metrology/conformity/conformance-probability";
import { type GlobalRiskInput, globalRisk } from "@/lib/metrology/conformity/global-risk";
import { specificRisk } from "@/lib/metrology/conformity/specific-risk";
import { normalProbability } from "@/lib/metrology/number/normal";
import { studentProbability } from "@/lib/metrology/number/student";

describe("conformanceProbability by Student's t", () => {
  it("is two-sided Student's probability for symmetric limits", () => {
    for (const nu of [1, 2, 4, 9, 50]) {
      expect(conformanceProbability(0, 0.5, -1, 1, nu)).toBeCloseTo(studentProbability(2, nu), 14);
    }
  });

  // Guard band of 4.5·u: the normal distribution promises 3.4e-6, with ν = 4 it is 5.4e-3.
  it("does not promise with four degrees of freedom what only the normal one keeps", () => {
    const below = Number.NEGATIVE_INFINITY;
    expect(nonconformanceProbability(-4.5, 1, below, 0)).toBeCloseTo(3.3977e-6, 9);
    expect(nonconformanceProbability(-4.5, 1, below, 0, 4)).toBeCloseTo(5.4e-3, 4);
    expect(nonconformanceProbability(4.5, 1, 0, Number.POSITIVE_INFINITY, 4)).toBeCloseTo(5.4e-3, 4);
    expect(nonconformanceProbability(-3.7469473879791977, 1, below, 0, 4)).toBeCloseTo(0.01, 10);
  });

  it("cuts ν to a whole number, but takes 8.999 999 999 9 for 9", () => {
    expect(conformanceProbability(1, 1, -2, 2, 4.9)).toBe(conformanceProbability(1, 1, -2, 2, 4));
    expect(conformanceProbability(1, 1, -2, 2, 8.999999999999)).toBe(conformanceProbability(1, 1, -2, 2, 9));
  });

  it("passes over to the normal one without a step", () => {
    const at = (nu: number) => conformanceProbability(0.4, 1, -2, 2, nu);
    expect(at(1000)).toBeCloseTo((studentProbability(1.6, 1000) + studentProbability(2.4, 1000)) / 2, 13);
    expect(Math.abs(at(1001) - at(1000))).toBeLessThan(1e-6);
    expect(Math.abs(at(1001) - at(1000))).toBeGreaterThan(0);
    expect(at(1e9)).toBeCloseTo(conformanceProbability(0.4, 1, -2, 2), 8);
    // A&S 26.7.8 against the exact sum at ν = 1001.
    const z = 1.6;
    const lower = 2.4;
    const exact = (studentProbability(z, 1001) + studentProbability(lower, 1001)) / 2;
    expect(at(1001)).toBeCloseTo(exact, 6);
  });

  it.each([
    [3, -2, 2],
    [-3, -2, 2],
  ])("with both limits on one side of y (%d)", (value, lower, upper) => {
    const p = conformanceProbability(value, 1, lower, upper, 5);
    const expected = (studentProbability(5, 5) - studentProbability(1, 5)) / 2;
    expect(p).toBeCloseTo(expected, 13);
    expect(nonconformanceProbability(value, 1, lower, upper, 5)).toBeCloseTo(1 - expected, 13);
  });

  it.each<[string, [number, number, number, number, (number | null)?]]>([
    ["y", [Number.NaN, 1, -1, 1]],
    ["u", [0, Number.NaN, -1, 1]],
    ["u below zero", [0, -1, -1, 1]],
    ["a limit", [0, 1, Number.NaN, 1]],
    ["limits turned round", [0, 1, 1, -1]],
    ["ν", [0, 1, -1, 1, 0.5]],
    ["ν not a number", [0, 1, -1, 1, Number.NaN]],
    ["y where u is 0", [Number.NaN, 0, -1, 1]],
  ])("is NaN where %s is none", (_, args) => {
    expect(conformanceProbability(...args)).toBeNaN();
    expect(nonconformanceProbability(...args)).toBeNaN();
  });

  // Student's sums end a few 1e-16 beyond 1 here.
  it.each([
    [1e6, 0.11655031784579671, 2],
    [-1e6, 0.11655031784579671, 2],
    [0, 3.19099584516185e-8, 3],
  ])("stays between 0 and 1 at y = %d, u = %d, ν = %d", (y, u, nu) => {
    const isInside = y === 0;
    expect(conformanceProbability(y, u, -2, 2, nu)).toBe(isInside ? 1 : 0);
    expect(nonconformanceProbability(y, u, -2, 2, nu)).toBe(isInside ? 0 : 1);
  });

  it("both together are one, and the outside keeps its digits", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.constantFrom(null, 1, 4, 30),
        (y, u, nu) => {
          const inside = conformanceProbability(y, u, -2, 2, nu);
          const outside = nonconformanceProbability(y, u, -2, 2, nu);
          expect(inside + outside).toBeCloseTo(1, 13);
          expect(inside).toBeGreaterThanOrEqual(0);
          expect(outside).toBeGreaterThanOrEqual(0);
        },
      ),
    );
    expect(nonconformanceProbability(0, 0.2, -2, 2)).toBeCloseTo(2 * normalProbability(-10), 30);
    expect(nonconformanceProbability(0, 0.2, -2, 2)).toBeGreaterThan(0);
    expect(nonconformanceProbability(3, 0, -2, 2)).toBe(1);
    expect(nonconformanceProbability(2, 0, -2, 2)).toBe(0);
    expect(nonconformanceProbability(-2, 0, -2, 2)).toBe(0);
    expect(nonconformanceProbability(-2.1, 0, -2, 2)).toBe(1);
  });

  it("with equal limits leaves nothing inside", () => {
    expect(conformanceProbability(0, 1, 1, 1)).toBe(0);
  });
});

describe("specificRisk", () => {
  it("of an accepted item is what lies outside, of a rejected one what lies inside", () => {
    expect(specificRisk(true, 2, 0.25, -2.5, 2.5)).toEqual({
      kind: "false-acceptance",
      probability: nonconformanceProbability(2, 0.25, -2.5, 2.5),
    });
    expect(specificRisk(false, 2.6, 0.25, -2.5, 2.5, 4)).toEqual({
      kind: "false-rejection",
      probability: conformanceProbability(2.6, 0.25, -2.5, 2.5, 4),
    });
    // At AL with w = U = 2u: 2.275 %.
    expect(specificRisk(true, 2, 0.25, -2.5, 2.5).probability).toBeCloseTo(0.02275, 5);
  });
});

const process: GlobalRiskInput = {
  priorMean: 0.1,
  priorStandardDeviation: 0.6,
  standardUncertainty: 0.2,
  lowerTolerance: -1,
  upperTolerance: 1,
  lowerAcceptance: -0.8,
  upperAcceptance: 0.8,
};

const risk = (change: Partial<GlobalRiskInput> = {}) => {
  const result = globalRisk({ ...process, ...change });
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};

/** The two integrals by the midpoint rule, region by region, straight from JCGM 106:2012, 9.5. */
const bruteForce = (input: GlobalRiskInput) => {
  const { priorMean: mean, priorStandardDeviation: sigma, standardUncertainty: u } = input;
  const clip = (x: number) => Math.min(Math.max(x, mean - 9 * sigma), mean + 9 * sigma);
  const accept = (x: number) =>
    normalProbability((input.upperAcceptance - x) / u) - normalProbability((input.lowerAcceptance - x) / u);
  const region = (from: number, to: number, f: (x: number) => number) => {
    const steps = 20_000;
    const width = (clip(to) - clip(from)) / steps;
    let total = 0;
    for (let i = 0; i < steps; i += 1) {
      const x = clip(from) + (i + 0.5) * width;
      const z = (x - mean) / sigma;
      total += (Math.exp((-z * z) / 2) / (sigma * Math.sqrt(2 * Math.PI))) * f(x) * width;
    }
    return total;
  };
  const { lowerTolerance, upperTolerance } = input;
  return {
    consumer:
      region(Number.NEGATIVE_INFINITY, lowerTolerance, accept) +
      region(upperTolerance, Number.POSITIVE_INFINITY, accept),
    producer: region(lowerTolerance, upperTolerance, (x) => 1 - accept(x)),
  };
};

describe("globalRisk (JCGM 106:2012, 9.5)", () => {
  it.each<[string, Partial<GlobalRiskInput>]>([
    ["with guard band", {}],
    ["simple acceptance", { lowerAcceptance: -1, upperAcceptance: 1 }],
    ["a good measurement", { standardUncertainty: 0.003 }],
    ["a poor measurement", { standardUncertainty: 3 }],
    ["a narrow process", { priorStandardDeviation: 0.05 }],
    ["a wide process", { priorStandardDeviation: 40 }],
    ["a narrow process measured poorly", { priorStandardDeviation: 0.05, standardUncertainty: 3 }],
    ["a process far outside", { priorMean: 2.5 }],
    ["limits not symmetric", { lowerTolerance: -0.3, lowerAcceptance: -0.5 }],
  ])("is what the double sum gives: %s", (_, change) => {
    const exact = risk(change);
    const rough = bruteForce({ ...process, ...change });
    expect(exact.consumer).toBeCloseTo(rough.consumer, 6);
    expect(exact.producer).toBeCloseTo(rough.producer, 6);
  });

  it("has the closed form of a bivariate normal where one limit and the mean coincide", () => {
    // P(η < 0 and measured > 0) = (π/2 − asin ρ)/2π, ρ = σ/√(σ² + u²) (Sheppard's theorem).
    const one = {
      priorMean: 0,
      priorStandardDeviation: 0.6,
      standardUncertainty: 0.2,
      lowerTolerance: 0,
      upperTolerance: Number.POSITIVE_INFINITY,
      lowerAcceptance: 0,
      upperAcceptance: Number.POSITIVE_INFINITY,
    };
    const expected = (Math.PI / 2 - Math.asin(0.6 / Math.sqrt(0.36 + 0.04))) / (2 * Math.PI);
    expect(risk(one).consumer).toBeCloseTo(expected, 12);
    expect(risk(one).producer).toBeCloseTo(expected, 12);
    const other = {
      ...one,
      lowerTolerance: Number.NEGATIVE_INFINITY,
      upperTolerance: 0,
      lowerAcceptance: Number.NEGATIVE_INFINITY,
      upperAcceptance: 0,
    };
    expect(risk(other).consumer).toBeCloseTo(expected, 12);
    expect(risk(other).producer).toBeCloseTo(expected, 12);
  });

  it("keeps its digits where almost nothing is accepted, on either side", () => {
    // All items stand at 0 ± 0.001; accepted is what is measured ten u away.
    const far = { priorMean: 0, priorStandardDeviation: 0.001, lowerTolerance: 1, upperTolerance: 9 };
    const above = risk({ ...far, lowerAcceptance: 2, upperAcceptance: 9 });
    const below = risk({
      ...far,
      lowerTolerance: -9,
      upperTolerance: -1,
      lowerAcceptance: -9,
      upperAcceptance: -2,
    });
    const expected = normalProbability(-2 / Math.sqrt(0.2 ** 2 + 0.001 ** 2));
    expect(above.consumer / expected).toBeCloseTo(1, 9);
    expect(below.consumer / expected).toBeCloseTo(1, 9);
  });

  it("moves risk from the customer to the maker as the guard band grows", () => {
    let before = risk({ lowerAcceptance: -1.4, upperAcceptance: 1.4 });
    for (let limit = 1.3; limit > 0.1; limit -= 0.1) {
      const here = risk({ lowerAcceptance: -limit, upperAcceptance: limit });
      expect(here.consumer).toBeLessThan(before.consumer);
      expect(here.producer).toBeGreaterThan(before.producer);
      before = here;
    }
  });

  it("all parts of the process make one", () => {
    const { consumer, producer } = risk();
    const inside = normalProbability((1 - 0.1) / 0.6) - normalProbability((-1 - 0.1) / 0.6);
    const spread = Math.sqrt(0.6 ** 2 + 0.2 ** 2);
    const accepted = normalProbability((0.8 - 0.1) / spread) - normalProbability((-0.8 - 0.1) / spread);
    expect(inside - producer).toBeCloseTo(accepted - consumer, 12);
  });

  it.each<[Partial<GlobalRiskInput>, string]>([
    [{ priorMean: Number.NaN }, "not-finite"],
    [{ priorStandardDeviation: Number.POSITIVE_INFINITY }, "not-finite"],
    [{ standardUncertainty: Number.NaN }, "not-finite"],
    [{ standardUncertainty: 0 }, "outside-range"],
    [{ priorStandardDeviation: 0 }, "outside-range"],
    [{ lowerTolerance: 1 }, "outside-range"],
    [{ upperAcceptance: -0.9 }, "outside-range"],
    [{ lowerTolerance: Number.NaN }, "outside-range"],
  ])("refuses %o", (change, kind) => {
    const result = globalRisk({ ...process, ...change });
    expect(result.ok ? "" : result.problem.kind).toBe(kind);
    expect(result.ok ? "" : result.problem.message).not.toBe("");
  });
});
