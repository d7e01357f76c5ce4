import { describe, expect, it } from "vitest";
import { arctangent } from "@/lib/metrology/number/arctangent";
import { complementaryErrorFunction, errorFunction } from "@/lib/metrology/number/error-function";
import { exponential } from "@/lib/metrology/number/exponential";
import { normalProbability, normalQuantile } from "@/lib/metrology/number/normal";
import { polynomial, polynomialSlope } from "@/lib/metrology/number/polynomial";

/** Within so many units in the last place of the expected value. */
function expectWithinUlp(actual: number, expected: number, ulps: number): void {
  const allowed = ulps * 2 ** -52 * Math.abs(expected);
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(allowed);
}

// Expected values of this file: computed with 40 decimal digits by an arbitrary-precision program.

describe("exponential", () => {
  it.each([
    [0, 1],
    [1e-10, 1.0000000001],
    [0.5, 1.6487212707001282],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the value under test is its own
    [1, 2.718281828459045],
    [-1, 0.36787944117144233],
    [10, 22026.465794806718],
    [-20, 2.061153622438558e-9],
    [100, 2.6881171418161356e43],
    [709, 8.218407461554972e307],
    [-700, 9.85967654375977e-305],
  ])("e^%f", (x, expected) => {
    expectWithinUlp(exponential(x), expected, 1);
  });

  it("ends in infinity, in zero, and passes NaN on", () => {
    expect(exponential(710)).toBe(Number.POSITIVE_INFINITY);
    expect(exponential(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
    expect(exponential(-746)).toBe(0);
    expect(exponential(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(exponential(Number.NaN)).toBeNaN();
  });

  it("keeps the smallest numbers", () => {
    expect(exponential(-745)).toBe(5e-324);
  });

  it("turns sums into products over the whole range", () => {
    for (let x = -340; x < 340; x += 7.3) {
      expectWithinUlp(exponential(x) * exponential(1.25), exponential(x + 1.25), 300);
    }
  });
});

describe("error function", () => {
  it.each([
    [0.001, 0.0011283787909692365, 0.9988716212090307],
    [0.1, 0.1124629160182849, 0.8875370839817152],
    [0.5, 0.5204998778130465, 0.4795001221869535],
    [1, 0.8427007929497149, 0.15729920705028513],
    [1.5, 0.9661051464753108, 0.033894853524689274],
    [2, 0.9953222650189527, 0.004677734981047266],
    [2.5, 0.999593047982555, 0.0004069520174449589],
    [3, 0.9999779095030014, 2.209049699858544e-5],
    [4, 0.9999999845827421, 1.541725790028002e-8],
  ])("at %f, its complement and its mirror image", (x, erf, erfc) => {
    expectWithinUlp(errorFunction(x), erf, 4);
    expect(errorFunction(-x)).toBe(-errorFunction(x));
    // The complement is 1 − erf up to 2.5: good to 1e-15, not to its own last place.
    expect(Math.abs(complementaryErrorFunction(x) - erfc)).toBeLessThan(1e-15);
    expect(complementaryErrorFunction(-x)).toBeCloseTo(1 + erf, 14);
  });

  it.each([
    [3, 2.209049699858544e-5],
    [5, 1.537459794428035e-12],
    [10, 2.088487583762545e-45],
    [26, 5.663192408856143e-296],
  ])("keeps its relative accuracy far out: erfc %f", (x, expected) => {
    expect(Math.abs(complementaryErrorFunction(x) / expected - 1)).toBeLessThan(3e-13);
  });

  it("has no step where the two forms meet", () => {
    const below = errorFunction(2.5 - 1e-9);
    const above = errorFunction(2.5);
    expect(above - below).toBeGreaterThan(0);
    expect(above - below).toBeLessThan(4e-12);
  });
});

describe("normal distribution", () => {
  it("gives the probabilities of tables", () => {
    expect(normalProbability(0)).toBe(0.5);
    expect(normalProbability(1.96)).toBeCloseTo(0.9750021, 7);
    expect(normalProbability(-2)).toBeCloseTo(0.0227501319, 10);
    expect(normalProbability(2) - normalProbability(-2)).toBeCloseTo(0.9544997361036416, 14);
  });

  it.each([
    [0.975, 1.9599639845400543],
    [0.001, -3.0902323061678136],
    [0.99, 2.326347874040841],
    [0.9999999, 5.1993375821928165],
  ])("quantile of %f", (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 8);
  });

  it("has its middle at zero and no quantile outside", () => {
    expect(Math.abs(normalQuantile(0.5))).toBeLessThan(1e-14);
    for (const p of [0, 1, -0.1, 1.1, Number.NaN]) expect(normalQuantile(p)).toBeNaN();
  });

  it("gives the bits of halving alone, whatever the estimate spares", () => {
    const byHalvingAlone = (p: number): number => {
      let [low, high] = [-40, 0];
      for (let i = 0; i < 80; i += 1) {
        const middle = (low + high) / 2;
        if (normalProbability(middle) < p) low = middle;
        else high = middle;
      }
      return (low + high) / 2;
    };
    const tail = Array.from({ length: 320 }, (_, decade) => 0.37 * 10 ** -decade).filter((p) => p > 0);
    const middle = Array.from({ length: 500 }, (_, n) => (n + 1) / 1000);
    for (const p of [...tail, ...middle, 0.5 - 1e-12, 5e-324])
      expect(Object.is(normalQuantile(p), byHalvingAlone(p)), `p = ${p}`).toBe(true);
  });
});

describe("arctangent", () => {
  it.each([
    [0, 0],
    [0.0001, 9.999999966666667e-5],
    [0.1, 0.09966865249116202],
    [0.5, 0.4636476090008061],
    [1, 0.7853981633974483],
    [2, 1.1071487177940904],
    [10, 1.4711276743037347],
    [1000, 1.5697963271282298],
  ])("of %f", (x, expected) => {
    expectWithinUlp(arctangent(x), expected, 6);
    expect(arctangent(-x)).toBe(-arctangent(x));
  });

  it("reaches a right angle at infinity", () => {
    expect(arctangent(Number.POSITIVE_INFINITY)).toBe(1.5707963267948966);
  });
});

describe("polynomial", () => {
  it("is evaluated, and so is its slope", () => {
    expect(polynomial([1, -2, 3], 2)).toBe(9);
    expect(polynomialSlope([1, -2, 3], 2)).toBe(10);
    expect(polynomial([], 5)).toBe(0);
    expect(polynomialSlope([7], 5)).toBe(0);
  });
});
