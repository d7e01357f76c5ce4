import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalizedError } from "@/lib/metrology/quality/normalized-error";
import { zetaScore } from "@/lib/metrology/quality/zeta-score";
import { problemOf, resultOf } from "../result-of";

const of = (value: number, uncertainty: number) => ({ value, uncertainty });

describe("normalizedError", () => {
  it("is the difference over the U of the difference", () => {
    expect(resultOf(normalizedError(of(1000.5, 0.3), of(1000, 0.4)))).toEqual({
      score: 1,
      satisfactory: true,
    });
    expect(resultOf(normalizedError(of(999, 0.3), of(1000, 0.4)))).toEqual({
      score: -2,
      satisfactory: false,
    });
  });

  it("asks more of results that rest on one reference", () => {
    const own = resultOf(normalizedError(of(0.4, 0.3), of(0, 0.4)));
    const shared = resultOf(normalizedError(of(0.4, 0.3), of(0, 0.4), 0.8));
    expect(own.satisfactory).toBe(true);
    expect(shared.score).toBeCloseTo(0.4 / Math.sqrt(0.09 + 0.16 - 2 * 0.8 * 0.12), 12);
    expect(shared.satisfactory).toBe(false);
  });

  it("turns its sign when the two are exchanged, and does not mind a common shift", () => {
    const u = fc.double({ min: 0.01, max: 10, noNaN: true });
    const value = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(value, value, u, u, fc.double({ min: -0.99, max: 0.99, noNaN: true }), (x, y, a, b, r) => {
        const score = resultOf(normalizedError(of(x, a), of(y, b), r)).score;
        expect(resultOf(normalizedError(of(y, b), of(x, a), r)).score + score).toBeCloseTo(0, 8);
        expect(resultOf(normalizedError(of(x + 64, a), of(y + 64, b), r)).score).toBeCloseTo(score, 8);
      }),
    );
  });

  it("refuses what is no comparison, by name", () => {
    expect(problemOf(normalizedError(of(Number.NaN, 1), of(0, 1)))).toBe("not-finite");
    expect(problemOf(normalizedError(of(0, -1), of(0, 1)))).toBe("outside-range");
    expect(problemOf(normalizedError(of(0, 1), of(0, -1)))).toBe("outside-range");
    expect(problemOf(normalizedError(of(0, 1), of(0, 1), 1.1))).toBe("outside-range");
    expect(problemOf(normalizedError(of(0, 1), of(0, 1), 1))).toBe("no-solution");
  });
});

describe("zetaScore", () => {
  it("judges at 2 and 3", () => {
    const verdict = (difference: number) => resultOf(zetaScore(of(difference, 3), of(0, 4))).verdict;
    expect([verdict(10), verdict(-10.1), verdict(14.9), verdict(-15)]).toEqual([
      "satisfactory",
      "questionable",
      "questionable",
      "unsatisfactory",
    ]);
    expect(resultOf(zetaScore(of(10, 3), of(0, 4))).score).toBe(2);
    expect(problemOf(zetaScore(of(0, 0), of(0, 0)))).toBe("no-solution");
  });
});
