import { describe, expect, it } from "vitest";
import { studentProbability, studentQuantile } from "@/lib/metrology/number/student";
import { gumTableG2NinetyFive, gumTableG2TwoSigma } from "../vectors/student-t";

const TWO_SIGMA = 0.9544997361036416;

describe("Student's t against JCGM 100:2008, table G.2", () => {
  it.each(gumTableG2TwoSigma)("95.45 %%, ν = %i: %s", (nu, printed) => {
    const decimals = printed.split(".")[1]?.length ?? 0;
    expect(studentQuantile(TWO_SIGMA, nu, 2).toFixed(decimals)).toBe(printed);
  });

  it.each(gumTableG2NinetyFive)("95 %%, ν = %i: %s", (nu, printed) => {
    expect(studentQuantile(0.95, nu).toFixed(2)).toBe(printed);
  });
});

describe("Student's t in full precision", () => {
  // Computed with 40 digits by an arbitrary-precision program, from the incomplete beta function.
  it.each([
    [1, 13.96773019924455],
    [2, 4.526536687430166],
    [3, 3.306822175005652],
    [7, 2.428805130403568],
    [50, 2.051248172881657],
    [999, 2.002505574006525],
    [1000, 2.00250306536122],
    [1001, 2.002500561734329],
    [5000, 2.000500122522878],
    [100000, 2.000025000306253],
  ])("ν = %i", (nu, expected) => {
    expect(Math.abs(studentQuantile(TWO_SIGMA, nu, 2) / expected - 1)).toBeLessThan(5e-13);
  });

  it("falls with ν, across the change of method too", () => {
    let before = Number.POSITIVE_INFINITY;
    for (const nu of [1, 2, 3, 4, 5, 9, 10, 99, 100, 998, 999, 1000, 1001, 1002, 10_000]) {
      const t = studentQuantile(TWO_SIGMA, nu, 2);
      expect(t).toBeLessThan(before);
      expect(t).toBeGreaterThan(2);
      before = t;
    }
  });

  it("goes back and forth between t and p, odd ν and even", () => {
    for (const nu of [1, 2, 5, 8, 31, 400]) {
      for (const p of [0.1, 0.6827, 0.9, 0.9973]) {
        expect(studentProbability(studentQuantile(p, nu), nu)).toBeCloseTo(p, 12);
      }
    }
  });

  it("is zero at zero and never beyond one", () => {
    for (const nu of [1, 2, 3, 10, 11]) {
      expect(studentProbability(0, nu)).toBe(0);
      expect(studentProbability(1e6, nu)).toBeLessThanOrEqual(1 + 1e-12);
      expect(studentProbability(1e6, nu)).toBeGreaterThan(0.9999);
    }
  });

  it("has no value for half a degree of freedom, or none", () => {
    for (const nu of [0, -1, 0.5, 2.5, Number.NaN]) expect(studentQuantile(TWO_SIGMA, nu, 2)).toBeNaN();
    expect(studentQuantile(0, 5)).toBeNaN();
    expect(studentQuantile(1, 5)).toBeNaN();
  });
});
