import { describe, expect, it } from "vitest";
import { combine } from "@/lib/metrology/uncertainty/combine";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { chooseCoverage, dominantPolicy, trapezoidFactor } from "@/lib/metrology/uncertainty/coverage";
import { coverageFactor } from "@/lib/metrology/uncertainty/coverage-factor";
import { outcomeValue } from "./outcome-value";

const line = (distribution: string, effect: number, degreesOfFreedom: number | null = null) => ({
  distribution,
  effect,
  degreesOfFreedom,
});
const rectangle = (halfWidth: number) => line("rectangular", halfWidth / Math.sqrt(3));
const chosen = (effects: readonly ReturnType<typeof line>[]) =>
  outcomeValue(chooseCoverage(effects, [], combine(effects), dominantPolicy));

describe("chooseCoverage", () => {
  it("takes Student's t by default, whatever dominates", () => {
    const effects = [rectangle(1), line("normal", 0.1, 4)];
    const combined = combine(effects);
    const coverage = outcomeValue(chooseCoverage(effects, [], combined));
    expect(coverage).toEqual({
      kind: "student",
      factor: outcomeValue(coverageFactor(combined.degreesOfFreedom)),
      probability: 0.9544997361036416,
      degreesOfFreedom: combined.degreesOfFreedom,
    });
  });

  it("takes it also where no rectangle dominates", () => {
    expect(chosen([line("normal", 1), line("normal", 0.1)]).kind).toBe("student");
    expect(chosen([rectangle(0), line("normal", 1)]).kind).toBe("student");
    expect(chosen([rectangle(1), line("normal", 0.5)]).kind).toBe("student");
    expect(chosen([rectangle(1), rectangle(0.7), rectangle(0.7)]).kind).toBe("student");
    expect(chosen([line("normal", 1)])).toMatchObject({ factor: 2, degreesOfFreedom: null });
  });

  it("changes at the limit: 0.3 is still dominant", () => {
    expect(chosen([line("rectangular", 10), line("normal", 2.9999)]).kind).toBe("one-dominant-rectangle");
    expect(chosen([line("rectangular", 10), line("normal", 3.0001)]).kind).toBe("student");
  });

  it("takes p·√3 alone and the trapezoid for two, largest first", () => {
    expect(chosen([line("normal", 0.1), rectangle(-2)])).toMatchObject({
      kind: "one-dominant-rectangle",
      factor: 0.95 * 1.7320508075688772,
      probability: 0.95,
      limit: 0.3,
      ratio: expect.closeTo(0.1 / (2 / Math.sqrt(3)), 14),
      dominant: 1,
    });
    const two = chosen([rectangle(1), line("normal", 0.1), rectangle(-3)]);
    expect(two).toMatchObject({ kind: "two-dominant-rectangles", dominant: [2, 0], limit: 0.3 });
    if (two.kind === "two-dominant-rectangles") expect(two.beta).toBeCloseTo(0.5, 14);
    expect(two.factor).toBe(trapezoidFactor(two.kind === "two-dominant-rectangles" ? two.beta : 0, 0.95));
  });

  it("does not call a rectangle dominant that is correlated with another line", () => {
    const effects = [rectangle(2), line("normal", 0.1), rectangle(0.1)];
    const methodWith = (coefficient: number, second: number) => {
      const correlations = [{ first: 0, second, coefficient }];
      const combined = outcomeValue(combineCorrelated(effects, correlations));
      return outcomeValue(chooseCoverage(effects, correlations, combined, dominantPolicy)).kind;
    };
    expect(methodWith(0.2, 1)).toBe("student");
    expect(methodWith(0.2, 2)).toBe("student");
    expect(methodWith(0, 1)).toBe("one-dominant-rectangle");
  });

  it("lets a rectangle dominate while only the others are correlated, whichever way the pair is named", () => {
    const effects = [line("normal", 0.1), line("normal", 0.1), rectangle(2)];
    const chosenWith = (first: number, second: number) => {
      const correlations = [{ first, second, coefficient: 0.5 }];
      const combined = outcomeValue(combineCorrelated(effects, correlations));
      return outcomeValue(chooseCoverage(effects, correlations, combined, dominantPolicy));
    };
    expect(chosenWith(0, 1)).toMatchObject({ kind: "one-dominant-rectangle", dominant: 2 });
    expect(chosenWith(1, 2).kind).toBe("student");
    expect(chosenWith(2, 1).kind).toBe("student");
  });

  it("states the ratio of the rest to both rectangles together, and changes at its limit", () => {
    const two = (rest: number) =>
      chosen([line("rectangular", 4), line("normal", rest), line("rectangular", 3)]);
    expect(two(1)).toMatchObject({ kind: "two-dominant-rectangles", ratio: expect.closeTo(0.2, 14) });
    expect(two(1.4999).kind).toBe("two-dominant-rectangles");
    expect(two(1.5001).kind).toBe("student");
  });

  it("hands on that there are too few degrees of freedom", () => {
    const effects = [line("normal", 1, 0.5)];
    const outcome = chooseCoverage(effects, [], combine(effects));
    expect(outcome.ok ? "found" : outcome.problem.kind).toBe("too-few");
  });
});

describe("trapezoidFactor", () => {
  it("is p·√3 for a rectangle and (1 − √(1 − p))·√6 for a triangle", () => {
    expect(trapezoidFactor(1, 0.95)).toBeCloseTo(0.95 * Math.sqrt(3), 14);
    expect(trapezoidFactor(0, 0.95)).toBeCloseTo((1 - Math.sqrt(0.05)) * Math.sqrt(6), 14);
  });

  it("has no step where the interval's end leaves the slope for the top", () => {
    const edge = 0.95 / 1.05;
    expect(trapezoidFactor(edge - 1e-9, 0.95)).toBeCloseTo(trapezoidFactor(edge + 1e-9, 0.95), 8);
  });

  it("covers p of the trapezoid, by its area", () => {
    for (const beta of [0, 0.2, 0.33, 0.8, 0.92, 1]) {
      for (const p of [0.9, 0.95, 0.9545]) {
        // Half-width 1, top from −β to β, height 1/(1 + β).
        const end = trapezoidFactor(beta, p) * Math.sqrt((1 + beta * beta) / 6);
        const beyond = end <= beta ? (1 - beta) / 2 + beta - end : (1 - end) ** 2 / (1 - beta) / 2;
        expect(1 - (2 * beyond) / (1 + beta)).toBeCloseTo(p, 12);
      }
    }
  });
});
