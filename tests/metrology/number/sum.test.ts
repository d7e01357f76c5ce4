import { describe, expect, it } from "vitest";
import { lineAt, linearFit } from "@/lib/metrology/number/linear-fit";
import { mean } from "@/lib/metrology/number/mean";
import { solveIncreasing } from "@/lib/metrology/number/solve-increasing";
import { sum, sumBetween } from "@/lib/metrology/number/sum";

describe("sum", () => {
  /** Magnitudes so far apart that none takes up a bit of another: more partial sums than three. */
  const apart = [1, 2 ** 60, 2 ** -60, 2 ** 120, 2 ** -120, 2 ** 180];

  it("is rounded once however far apart its terms are, in any order", () => {
    expect(sum([...apart, -(2 ** 180), -(2 ** 120), -(2 ** 60), -1])).toBe(2 ** -60 + 2 ** -120);
    expect(sum([...apart].reverse())).toBe(2 ** 180);
    expect(sum([...apart, -(2 ** 180), -(2 ** 120), -(2 ** 60)])).toBe(1 + 2 ** -60);
  });

  it("hands a value that is no number on, early or late", () => {
    expect(sum([Number.NaN, 1])).toBeNaN();
    expect(sum([...apart, Number.POSITIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
    expect(sum([...apart, Number.NaN])).toBeNaN();
  });

  it("of a part takes that part alone", () => {
    const values = [Number.NaN, ...apart, 5, Number.NaN];
    expect(sumBetween(values, 1, 3)).toBe(1 + 2 ** 60);
    expect(sumBetween(values, 7, 8)).toBe(5);
    expect(sumBetween(values, 4, 4)).toBe(0);
    expect(sumBetween([Number.NaN, ...apart, Number.POSITIVE_INFINITY], 1, 8)).toBe(Number.POSITIVE_INFINITY);
  });

  it("is rounded once", () => {
    expect(sum([0.1, 0.2, 0.3])).toBe(0.6);
    expect(sum(Array.from({ length: 10 }, () => 0.1))).toBe(1);
    expect(sum([1e16, 1, -1e16])).toBe(1);
    expect(sum([1, 1e100, 1, -1e100])).toBe(2);
    expect(sum([])).toBe(0);
  });

  it("decides a tie by the rest behind it", () => {
    // 1 + 2^-53 is a tie and goes to even; the smallest rest pushes it up.
    expect(sum([1, 2 ** -53])).toBe(1);
    expect(sum([1, 2 ** -53, 2 ** -110])).toBe(1 + 2 ** -52);
    expect(sum([1, -(2 ** -54)])).toBe(1);
    expect(sum([1, -(2 ** -54), -(2 ** -110)])).toBe(1 - 2 ** -53);
  });

  it("does not depend on the order of its terms", () => {
    const terms: number[] = [];
    let state = 12345;
    for (let i = 0; i < 400; i += 1) {
      state = (state * 1103515245 + 12345) % 2147483648;
      terms.push((state / 2147483648 - 0.5) * 10 ** (i % 30));
    }
    const expected = sum(terms);
    expect(sum([...terms].reverse())).toBe(expected);
    expect(sum([...terms].sort((a, b) => a - b))).toBe(expected);
    expect(sum([...terms].sort((a, b) => Math.abs(b) - Math.abs(a)))).toBe(expected);
  });

  it("never loses a NaN or an infinity", () => {
    expect(sum([1, Number.NaN, 2])).toBeNaN();
    expect(sum([1, Number.POSITIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
    expect(sum([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY])).toBeNaN();
  });

  it("takes typed arrays", () => {
    expect(sum(Float64Array.of(0.1, 0.2, 0.3))).toBe(0.6);
  });
});

describe("mean", () => {
  it("is exact where the mean is", () => {
    expect(mean([10500, 10503, 10503, 10504])).toBe(10502.5);
  });

  it("of nothing is not a number", () => {
    expect(mean([])).toBeNaN();
  });
});

describe("linearFit", () => {
  it("finds the line through points on a line", () => {
    const fit = linearFit([0, 10, 20, 40], [5, 4, 3, 1]);
    expect(fit.ok && fit.value).toEqual({ meanX: 17.5, meanY: 3.25, slope: -0.1 });
    expect(fit.ok && lineAt(fit.value, 30)).toBeCloseTo(2, 14);
  });

  it("stands on the mean of the points it balances", () => {
    const fit = linearFit([0, 1, 2], [0, 3, 0]);
    expect(fit.ok && fit.value).toEqual({ meanX: 1, meanY: 1, slope: 0 });
  });

  it("keeps the slope when the clock starts far away", () => {
    const seconds = [0, 60, 120, 180].map((t) => t + 1.7e9);
    const fit = linearFit(seconds, [1000, 1000.01, 1000.02, 1000.03]);
    expect(fit.ok && fit.value.slope).toBeCloseTo(0.01 / 60, 12);
  });

  it.each([
    ["no point", [], []],
    ["one point", [1], [2]],
    ["one time only", [3, 3, 3], [1, 2, 3]],
    ["times that are not numbers", [Number.NaN, 1], [1, 2]],
  ])("refuses %s", (_name, x, y) => {
    expect(linearFit(x, y).ok).toBe(false);
  });
});

describe("solveIncreasing", () => {
  const cube = (x: number) => ({ value: x * x * x, slope: 3 * x * x });

  it("finds a root from a good start, a bad one and none", () => {
    for (const start of [2, 0, 99, -5, Number.NaN]) {
      expect(solveIncreasing(cube, 8, { low: -10, high: 10 }, start, 1e-12)).toBeCloseTo(2, 11);
    }
  });

  it("finds roots that are the ends of the range", () => {
    expect(solveIncreasing(cube, 1000, { low: -10, high: 10 }, 9, 1e-12)).toBeCloseTo(10, 9);
    expect(solveIncreasing(cube, -1000, { low: -10, high: 10 }, -9, 1e-12)).toBeCloseTo(-10, 9);
  });

  it("comes to rest at a jump that steps over the target", () => {
    const jump = (x: number) => ({ value: x < 3 ? x : x + 1, slope: 1 });
    expect(solveIncreasing(jump, 3.5, { low: 0, high: 10 }, 5, 1e-12)).toBeCloseTo(3, 9);
  });
});
