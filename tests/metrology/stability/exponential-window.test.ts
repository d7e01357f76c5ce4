import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linearFit } from "@/lib/metrology/number/linear-fit";
import { driftOfExponential, rangeOfExponentials } from "@/lib/metrology/stability/exponential-window";
import { settlingBlocks } from "@/lib/metrology/stability/settling-blocks";
import { resultOf } from "../result-of";

describe("driftOfExponential", () => {
  it("is the slope that least squares finds on a fine grid, times the length", () => {
    for (const tau of [90, 600, 2500, 14000, 16000, 100000]) {
      const x = Array.from({ length: 20001 }, (_, i) => -600 + (600 * i) / 20000);
      const fit = resultOf(
        linearFit(
          x,
          x.map((one) => Math.exp(-one / tau)),
        ),
      );
      expect(driftOfExponential(600, tau) / (600 * fit.slope)).toBeCloseTo(1, 3);
    }
  });

  it("has no step where the series takes over", () => {
    const at = (z: number) => driftOfExponential(2 * z, 1);
    expect(at(0.02 - 1e-12) / at(0.02 + 1e-12)).toBeCloseTo(1, 8);
  });
});

describe("rangeOfExponentials", () => {
  it("is the range of the curve, turning point included", () => {
    const term = (tauSeconds: number) =>
      fc.record({
        celsius: fc.double({ min: -4, max: 4, noNaN: true }),
        tauSeconds: fc.constant(tauSeconds),
      });
    fc.assert(
      fc.property(term(100), term(600), fc.double({ min: 0, max: 600, noNaN: true }), (a, b, from) => {
        const grid = Array.from({ length: 2001 }, (_, i) => from + (600 * i) / 2000);
        const values = grid.map((x) => a.celsius * Math.exp(-x / 100) + b.celsius * Math.exp(-x / 600));
        const range = Math.max(...values) - Math.min(...values);
        const found = rangeOfExponentials(a, b, from, from + 600);
        expect(found).toBeGreaterThanOrEqual(range - 1e-9);
        expect(found - range).toBeLessThan(1e-3);
      }),
    );
  });

  it("sees an overshoot that begins and ends at one value", () => {
    const found = rangeOfExponentials(
      { celsius: -2, tauSeconds: 100 },
      { celsius: 2, tauSeconds: 600 },
      0,
      5000,
    );
    expect(found).toBeGreaterThan(1);
    expect(
      rangeOfExponentials({ celsius: 1, tauSeconds: 100 }, { celsius: 2, tauSeconds: 600 }, 0, 5000),
    ).toBeCloseTo(3, 2);
  });
});

describe("settlingBlocks", () => {
  it("lets each reference count once, and leaves out a block that lacks one", () => {
    const blocks = settlingBlocks(
      [
        { id: "A", seconds: [100, 104, 112, 130], celsius: [1, 3, 5, 7] },
        { id: "B", seconds: [90, 102, 125, 131, 400], celsius: [99, 12, 14, 17, 99] },
      ],
      100,
      200,
    );
    expect(blocks).toEqual({ originSeconds: 100, seconds: [2, 30.5], celsius: [7, 12] });
    expect(settlingBlocks([], 0, 10).seconds).toEqual([]);
  });
});
