import { describe, expect, it } from "vitest";
import {
  decimalExponent,
  decimalOf,
  powerOfTen,
  roundHalfEven,
  roundRatio,
  scaledInteger,
  writeDecimal,
} from "@/lib/metrology/number/decimal";

describe("roundHalfEven", () => {
  it.each([
    [0.5, 0, "0"],
    [1.5, 0, "2"],
    [2.5, 0, "2"],
    [3.5, 0, "4"],
    [-2.5, 0, "-2"],
    [0.125, 2, "0.12"],
    [0.375, 2, "0.38"],
    [25, -1, "20"],
    [35, -1, "40"],
    [36228.77, -1, "36230"],
    [36228.77, 0, "36229"],
    [1e21, 0, "1000000000000000000000"],
    [4, -1, "0"],
    [5e-324, 2, "0.00"],
  ])("%d to %i decimals is %s", (x, decimals, expected) => {
    expect(roundHalfEven(x, decimals)).toBe(expected);
  });

  it("decides on the number that was meant, not on its float64", () => {
    // The float64 nearest to 1.005 lies below it, the one nearest to 2.675 too; 1.115 lies above.
    expect(roundHalfEven(1.005, 2)).toBe("1.00");
    expect(roundHalfEven(1.015, 2)).toBe("1.02");
    expect(roundHalfEven(2.675, 2)).toBe("2.68");
    expect(roundHalfEven(2.665, 2)).toBe("2.66");
    expect(roundHalfEven(1.115, 2)).toBe("1.12");
    expect(roundHalfEven(0.1, 30)).toBe("0.100000000000000000000000000000");
  });

  it("agrees with what the language itself prints, where no tie decides", () => {
    for (let x = 0.0137; x < 1e6; x *= 1.618) {
      for (const decimals of [0, 1, 3, 7]) expect(roundHalfEven(x, decimals)).toBe(x.toFixed(decimals));
    }
  });

  it("gives zero no sign", () => {
    expect(roundHalfEven(-0.001, 2)).toBe("0.00");
    expect(roundHalfEven(-0, 1)).toBe("0.0");
    expect(roundHalfEven(-4, -1)).toBe("0");
  });

  it("shows what is not a number as such", () => {
    expect(roundHalfEven(Number.NaN, 2)).toBe("NaN");
    expect(roundHalfEven(Number.NEGATIVE_INFINITY, 2)).toBe("-Infinity");
  });
});

describe("scaledInteger", () => {
  it("rounds away from zero when asked to, and leaves whole numbers alone", () => {
    expect(scaledInteger(1.01, 1, "away")).toBe(11n);
    expect(scaledInteger(1.5, 1, "away")).toBe(15n);
    expect(scaledInteger(-1.01, 1, "away")).toBe(11n);
  });
});

describe("decimalOf", () => {
  it.each([
    [0, { negative: false, digits: 0n, decimals: 0 }],
    [-0.25, { negative: true, digits: 25n, decimals: 2 }],
    [1e21, { negative: false, digits: 1n, decimals: -21 }],
    [1.5e-7, { negative: false, digits: 15n, decimals: 8 }],
    [1200, { negative: false, digits: 1200n, decimals: 0 }],
  ])("%d", (x, expected) => {
    expect(decimalOf(x)).toEqual(expected);
  });
});

describe("roundRatio", () => {
  it.each([
    [7n, 2n, "half-even", 4n],
    [5n, 2n, "half-even", 2n],
    [2n, 3n, "half-even", 1n],
    [1n, 3n, "half-even", 0n],
    [1n, 3n, "away", 1n],
    [6n, 3n, "away", 2n],
  ] as const)("%s / %s, %s, is %s", (numerator, denominator, rounding, expected) => {
    expect(roundRatio(numerator, denominator, rounding)).toBe(expected);
  });

  it("powers of ten are exact", () => {
    expect(powerOfTen(0)).toBe(1n);
    expect(powerOfTen(25)).toBe(10_000_000_000_000_000_000_000_000n);
  });
});

describe("writeDecimal", () => {
  it.each([
    [5n, 2, false, "0.05"],
    [1234n, 2, true, "-12.34"],
    [12n, -2, false, "1200"],
    [0n, -2, true, "0"],
    [0n, 3, true, "0.000"],
  ])("%s with %i decimals", (digits, decimals, negative, expected) => {
    expect(writeDecimal(digits, decimals, negative)).toBe(expected);
  });
});

describe("decimalExponent", () => {
  it.each([
    [1, 0],
    [9.999999999999998, 0],
    [10, 1],
    [0.1, -1],
    [0.0999, -2],
    [1000, 3],
    [999.9999999999999, 2],
    [49.92, 1],
    [-0.02, -2],
    [1e-300, -300],
    [1.7976931348623157e308, 308],
    [5e-324, -324],
  ])("of %d is %i", (x, expected) => {
    expect(decimalExponent(x)).toBe(expected);
  });
});
