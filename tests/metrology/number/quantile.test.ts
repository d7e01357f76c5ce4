import { describe, expect, it } from "vitest";
import { quantile } from "@/lib/metrology/number/quantile";

describe("quantile", () => {
  it("interpolates between order statistics, up to both ends", () => {
    const values = [40, 10, 20, 30, -50];
    expect(quantile(values, 0)).toBe(-50);
    expect(quantile(values, 1)).toBe(40);
    expect(quantile(values, 0.5)).toBe(20);
    expect(quantile(values, 0.625)).toBe(25);
    expect(quantile(values, 0.1)).toBeCloseTo(-26, 12);
    expect(values).toEqual([40, 10, 20, 30, -50]);
  });

  it("has none of nothing, of NaN, and outside 0 … 1", () => {
    expect(quantile([], 0.5)).toBeNaN();
    expect(quantile([1, Number.NaN, 3], 0.5)).toBeNaN();
    for (const p of [-0.01, 1.01, Number.NaN]) expect(quantile([1, 2], p)).toBeNaN();
  });
});
