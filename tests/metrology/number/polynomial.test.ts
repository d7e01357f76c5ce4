import { describe, expect, it } from "vitest";
import { compensatedPolynomial } from "@/lib/metrology/number/compensated-polynomial";
import { polynomial, polynomialCurvature, polynomialSlope } from "@/lib/metrology/number/polynomial";
import { polynomialBlock, polynomialsAt } from "@/lib/metrology/number/polynomial-block";
import { solveIncreasing } from "@/lib/metrology/number/solve-increasing";

describe("polynomial", () => {
  it("has a curvature", () => {
    expect(polynomialCurvature([1, -2, 3, 4], 2)).toBe(2 * 3 + 6 * 4 * 2);
    expect(polynomialCurvature([1, 2], 2)).toBe(0);
    expect(polynomialSlope([], 2)).toBe(0);
  });

  it("stays NaN for NaN", () => {
    for (const f of [polynomial, polynomialSlope, polynomialCurvature, compensatedPolynomial]) {
      expect(f([1, 2, 3, 4], Number.NaN)).toBeNaN();
    }
  });
});

describe("compensatedPolynomial", () => {
  // (x − 1)^8, whose value beside 1 is lost to Horner's scheme: the coefficients are exact, and so is (x − 1)^8 to 1e-15.
  const eighth = [1, -8, 28, -56, 70, -56, 28, -8, 1];

  it("keeps what Horner's scheme loses", () => {
    for (const x of [0.99, 1.0078125, 1.02]) {
      const d = (x - 1) * (x - 1);
      const exact = d * d * d * d;
      expect(Math.abs(compensatedPolynomial(eighth, x) / exact - 1)).toBeLessThan(1e-12);
      expect(Math.abs(polynomial(eighth, x) / exact - 1)).toBeGreaterThan(1e-4);
    }
  });

  it("is the plain value where nothing cancels", () => {
    expect(compensatedPolynomial([1, -2, 3], 2)).toBe(9);
    expect(compensatedPolynomial([], 2)).toBe(0);
  });
});

describe("polynomialsAt", () => {
  it("gives the bits of `polynomial` for each value and its own polynomial", () => {
    const polynomials = [[0.1, -0.7, 1 / 3], [Math.SQRT2], [0, 1e-3, -2e-5, 3e-8, -4e-12, 7e-15]];
    const block = polynomialBlock(polynomials);
    const x = Float64Array.from({ length: 8 }, (_, i) => -3.3 + 1.7 * i);
    const which = Int32Array.from(x, (_, i) => i % 3);
    const result = new Float64Array(8);
    polynomialsAt(block, which, x, result, 0, 8, 1);
    const bits = (scale: number, i: number) =>
      scale * polynomial(polynomials[i % 3] as number[], x[i] as number);
    for (let i = 0; i < 8; i += 1) expect(Object.is(result[i], bits(1, i))).toBe(true);
    polynomialsAt(block, which.subarray(1), x, result.fill(-1), 4, 4, 1000);
    for (let i = 0; i < 4; i += 1) {
      expect(result[i]).toBe(-1);
      expect(Object.is(result[i + 4], bits(1000, i + 4))).toBe(true);
    }
  });
});

describe("solveIncreasing", () => {
  const range = { low: 0, high: 10 };

  it("hands a value that is not a number back as NaN", () => {
    const holed = (x: number) => ({ value: x > 4 ? Number.NaN : x, slope: 1 });
    expect(solveIncreasing(holed, 3, range, 5, 1e-12)).toBeNaN();
    expect(solveIncreasing(holed, 3, range, 1, 1e-12)).toBe(3);
  });

  it("gives NaN when a wrong slope lets it creep for ever", () => {
    const creeping = (x: number) => ({ value: x, slope: 1e3 });
    expect(solveIncreasing(creeping, 9, range, 0.5, 1e-12)).toBeNaN();
  });
});
