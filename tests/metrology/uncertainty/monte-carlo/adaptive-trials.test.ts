import { describe, expect, it } from "vitest";
import { monteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import type { Sampler } from "@/lib/metrology/uncertainty/monte-carlo/sampler";
import { outcomeValue } from "../outcome-value";

/** Trials in a block at p = 95 % (JCGM 101:2008, 7.9.4 b: at least 10⁴). */
const M = 10_000;

/**
 * Blocks whose mean is d and −d in turn, one half of each block s above it and the other s below. Of two blocks
 * y, u and both ends of the interval are therefore d and −d apart from their average, u not at all; twice the standard
 * deviation of an average (7.9.4 g) is 2·√(2d²/(2·1)) = 2d. All 2M trials together have Σ(x − x̄)² = 2M·(s² + d²).
 */
const alternating =
  (s: number, d: number): Sampler =>
  (_, values, from, to) => {
    for (let i = from; i < to; i += 1) {
      values[i] = (Math.floor(i / M) % 2 === 0 ? d : -d) + (i % 2 === 0 ? s : -s);
    }
  };

const afterTwoBlocks = (sampler: Sampler, divisor = 1) =>
  outcomeValue(
    monteCarlo(
      sampler,
      { seed: 1, stream: 0, probability: 0.95, trials: { kind: "adaptive", digits: 1, divisor } },
      new Float64Array(2 * M),
    ),
  );

describe("adaptive trials of known blocks (JCGM 101:2008, 7.9.4)", () => {
  it("settle when twice the standard deviation of the averages is at most δ, and not before", () => {
    // u is about 0.5: with one digit δ = 0.05.
    expect(afterTwoBlocks(alternating(0.5, 0.02))).toMatchObject({ trials: 2 * M, isSettled: true });
    // 2d = 0.06.
    expect(afterTwoBlocks(alternating(0.5, 0.03))).toMatchObject({ trials: 2 * M, isSettled: false });
    // A fifth of δ is 0.01 (8.2).
    expect(afterTwoBlocks(alternating(0.5, 0.004), 5).isSettled).toBe(true);
    expect(afterTwoBlocks(alternating(0.5, 0.006), 5).isSettled).toBe(false);
  });

  it("take δ from u in its own size", () => {
    // u is about 0.2, so that δ = 0.05 and not the 0.5 of a u of 1.
    expect(afterTwoBlocks(alternating(0.2, 0.06)).isSettled).toBe(false);
    // u is about 20: δ = 5.
    expect(afterTwoBlocks(alternating(20, 2)).isSettled).toBe(true);
    expect(afterTwoBlocks(alternating(20, 3)).isSettled).toBe(false);
  });

  it("take u from all trials together: within the blocks and between them, over 2M − 1", () => {
    // 0.95 is where u with one digit turns from 0.9 (δ = 0.05) to 1 (δ = 0.5); 2d = 0.2 lies between those.
    const d = 0.1;
    const withTotal = (u: number): Sampler =>
      alternating(Math.sqrt((u * u * (2 * M - 1)) / (2 * M) - d * d), d);
    const below = afterTwoBlocks(withTotal(0.94998));
    const above = afterTwoBlocks(withTotal(0.95002));
    expect(below.standardUncertainty).toBeCloseTo(0.94998, 12);
    expect(above.standardUncertainty).toBeCloseTo(0.95002, 12);
    expect(below.isSettled).toBe(false);
    expect(above.isSettled).toBe(true);
  });

  it("use a workspace of two blocks to its end", () => {
    const { trials, isSettled, standardUncertainty } = afterTwoBlocks(alternating(0, 0));
    expect({ trials, isSettled, standardUncertainty }).toEqual({
      trials: 2 * M,
      isSettled: true,
      standardUncertainty: 0,
    });
  });
});
