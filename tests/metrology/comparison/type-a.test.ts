import { describe, expect, it } from "vitest";
import { flagByGrubbs, grubbsCritical } from "@/lib/metrology/comparison/grubbs";
import { pooledRepeatability } from "@/lib/metrology/comparison/pooled-repeatability";
import { typeAFromBlocks } from "@/lib/metrology/comparison/type-a-from-blocks";
import { lineAt, linearFit } from "@/lib/metrology/number/linear-fit";
import { problemOf, resultOf } from "../result-of";

/** Numbers that scatter evenly about 0 (a congruential generator of its own, so that the test stays the same). */
function scatter(count: number, seed: number): number[] {
  let state = seed;
  return Array.from({ length: count }, () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647 - 0.5;
  });
}

/** Scans whose noise is remembered from one to the next, with a correlation time in scans. */
function correlated(count: number, time: number, seed: number): number[] {
  const keep = Math.exp(-1 / time);
  let last = 0;
  return scatter(count + 10 * time, seed)
    .map((white) => {
      last = keep * last + Math.sqrt(1 - keep * keep) * white;
      return last;
    })
    .slice(10 * time);
}

const everySecond = (values: readonly number[]) => ({ seconds: values.map((_, i) => i), values });

describe("typeAFromBlocks", () => {
  it("finds that 600 scans with a correlation time of 60 s are worth about five, not 600", () => {
    const numbers = Array.from({ length: 200 }, (_, k) =>
      resultOf(typeAFromBlocks(everySecond(correlated(600, 60, 1000 + k)), 200)),
    );
    const squares = numbers.map(({ standardUncertainty: u }) => u * u);
    const meanSquare = squares.reduce((a, b) => a + b) / 200;
    // Variance of single readings is 1/12 by construction.
    expect(1 / 12 / meanSquare).toBeGreaterThan(4);
    expect(1 / 12 / meanSquare).toBeLessThan(9);
    // Three blocks tell it roughly, one series at a time: nine in ten still say that it is nowhere near 600.
    expect(numbers.filter(({ effectiveNumber }) => effectiveNumber < 100).length).toBeGreaterThan(180);
    for (const { blocks, degreesOfFreedom } of numbers) expect([blocks, degreesOfFreedom]).toEqual([3, 2]);
  });

  it("agrees with s/√n for readings that are independent", () => {
    const squares = Array.from({ length: 100 }, (_, k) => {
      const { standardUncertainty: u } = resultOf(typeAFromBlocks(everySecond(scatter(600, 77 + k)), 30));
      return u * u;
    });
    expect((squares.reduce((a, b) => a + b) / 100) * 600 * 12).toBeCloseTo(1, 0);
  });

  it("never makes more of the readings than there are", () => {
    const flat = resultOf(typeAFromBlocks(everySecond([1, 2, 1, 2, 1, 2]), 2));
    expect(flat).toMatchObject({ standardUncertainty: 0, effectiveNumber: 6, blocks: 3, mean: 1.5 });
    expect(resultOf(typeAFromBlocks(everySecond([1, 2, 1, 2, 1, 2.0001]), 2)).effectiveNumber).toBe(6);
  });

  it("pays a degree of freedom for a drift that was taken out: u² is right on average, from four blocks on", () => {
    for (const blocks of [4, 6, 10]) {
      const length = 20 * blocks;
      const squares = Array.from({ length: 3000 }, (_, k) => {
        const values = scatter(length, 5 + 7 * k);
        const seconds = values.map((_value, i) => i);
        const line = resultOf(linearFit(seconds, values));
        const flat = values.map((value, i) => value - lineAt(line, i));
        const typeA = resultOf(typeAFromBlocks({ seconds, values: flat }, 20, 1));
        expect(typeA.degreesOfFreedom).toBe(blocks - 2);
        return typeA.standardUncertainty * typeA.standardUncertainty;
      });
      // Variance of the mean of white readings on [−½, ½): 1/12/n. Without the second degree it is 0.69 of it at four blocks.
      const ratio = (squares.reduce((a, b) => a + b) / squares.length) * 12 * length;
      expect(ratio, `${blocks} blocks`).toBeGreaterThan(0.94);
      expect(ratio, `${blocks} blocks`).toBeLessThan(1.06);
    }
    expect(problemOf(typeAFromBlocks(everySecond([1, 2, 3, 2, 1, 2]), 2, 1))).toBe("too-few");
  });

  it("refuses fewer than three blocks, an empty one, and what is no block", () => {
    expect(problemOf(typeAFromBlocks(everySecond([1, 2, 3, 4]), 2))).toBe("too-few");
    expect(problemOf(typeAFromBlocks(everySecond([1]), 2))).toBe("too-few");
    expect(problemOf(typeAFromBlocks({ seconds: [0, 1, 2, 3, 100], values: [1, 2, 3, 4, 5] }, 10))).toBe(
      "too-few",
    );
    expect(problemOf(typeAFromBlocks(everySecond([1, 2, 3]), 0))).toBe("not-applicable");
    expect(problemOf(typeAFromBlocks(everySecond([1, Number.NaN, 3]), 1))).toBe("not-finite");
  });
});

describe("pooledRepeatability", () => {
  it("weighs series by their degrees of freedom and divides by √n of the mean at hand", () => {
    const pooled = resultOf(
      pooledRepeatability(
        [
          { deviation: 2, readings: 5 },
          { deviation: 1, readings: 3 },
        ],
        4,
      ),
    );
    expect(pooled.degreesOfFreedom).toBe(6);
    expect(pooled.deviation).toBeCloseTo(Math.sqrt((4 * 4 + 2 * 1) / 6), 12);
    expect(pooled.standardUncertainty).toBeCloseTo(pooled.deviation / 2, 12);
  });

  it("refuses a history that is none", () => {
    expect(problemOf(pooledRepeatability([], 4))).toBe("too-few");
    expect(problemOf(pooledRepeatability([{ deviation: 1, readings: 1 }], 4))).toBe("too-few");
    expect(problemOf(pooledRepeatability([{ deviation: -1, readings: 4 }], 4))).toBe("not-applicable");
    expect(problemOf(pooledRepeatability([{ deviation: 1, readings: 4.5 }], 4))).toBe("not-applicable");
    expect(problemOf(pooledRepeatability([{ deviation: Number.NaN, readings: 4 }], 4))).toBe("not-finite");
    expect(problemOf(pooledRepeatability([{ deviation: 1, readings: Number.POSITIVE_INFINITY }], 4))).toBe(
      "not-finite",
    );
    expect(problemOf(pooledRepeatability([{ deviation: 1, readings: 4 }], 0))).toBe("not-applicable");
    expect(problemOf(pooledRepeatability([{ deviation: 1, readings: 4 }], 1.5))).toBe("not-applicable");
  });
});

describe("Grubbs' test", () => {
  it.each([
    // The first from the trade's tables (1.481), the others from memory of Grubbs and Beck (1972), two-sided 5 %.
    [4, 0.05, 1.481],
    [3, 0.05, 1.1543],
    [5, 0.05, 1.715],
    [10, 0.05, 2.29],
    [20, 0.05, 2.709],
  ])("critical value for n = %d at α = %d is %d", (n, alpha, expected) => {
    expect(resultOf(grubbsCritical(n, alpha))).toBeCloseTo(expected, 2);
  });

  it("flags a reading far out, and leaves it where it is", () => {
    const values = [1, 1.1, 0.9, 1, 1.05, 9];
    const flag = resultOf(flagByGrubbs(values, 0.05));
    expect(flag).toMatchObject({ suspect: 5, isFlagged: true });
    expect(values).toHaveLength(6);
    expect(resultOf(flagByGrubbs([1, 2, 3, 4], 0.05)).isFlagged).toBe(false);
    expect(resultOf(flagByGrubbs([2, 2, 2, 2], 0.05))).toMatchObject({ g: 0, isFlagged: false });
  });

  it("refuses two readings, odd counts and levels, and what is no number", () => {
    expect(problemOf(flagByGrubbs([1, 2], 0.05))).toBe("too-few");
    expect(problemOf(flagByGrubbs([1, 2, Number.NaN], 0.05))).toBe("not-finite");
    expect(problemOf(grubbsCritical(4.5, 0.05))).toBe("not-applicable");
    expect(problemOf(grubbsCritical(4, 1))).toBe("not-applicable");
  });
});
