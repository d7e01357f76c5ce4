/** A decimal number: ±digits·10^−decimals, exactly. `decimals` may be negative: 1e21 is 1·10^21. */
export type Decimal = { readonly negative: boolean; readonly digits: bigint; readonly decimals: number };

/**
 * The decimal number that a float64 stands for: the shortest one that names no other float64, which is also
 * how the language writes it (ECMA-262, Number::toString). Printed digits are decided on this and not on the
 * binary expansion: 2.675 is meant as 2.675, though its float64 lies a trifle below.
 * Unit: any. Range: every finite x; the caller keeps NaN and infinities away (BigInt throws on their text).
 */
export function decimalOf(x: number): Decimal {
  const [mantissa, exponent = "0"] = `${Math.abs(x)}`.split("e") as [string, string?];
  const [whole, fraction = ""] = mantissa.split(".") as [string, string?];
  return {
    negative: x < 0,
    digits: BigInt(whole + fraction),
    decimals: fraction.length - Number(exponent),
  };
}

/** 10ⁿ for a whole n ≥ 0, as an exact integer (arithmetic; no unit, no error cases). */
export function powerOfTen(n: number): bigint {
  return BigInt(`1${"0".repeat(n)}`);
}

/** To the nearest, a tie to the even digit (JCGM 100:2008, 7.2.6 rounds so in its examples); or always away from zero. */
export type Rounding = "half-even" | "away";

/**
 * numerator/denominator rounded to a whole number, exactly. Source: arithmetic on whole numbers; no unit.
 * Range: numerator ≥ 0, denominator > 0 (BigInt throws on division by zero); magnitudes only.
 */
export function roundRatio(numerator: bigint, denominator: bigint, rounding: Rounding): bigint {
  const quotient = numerator / denominator;
  const remainder = numerator % denominator;
  if (remainder === 0n) return quotient;
  if (rounding === "away") return quotient + 1n;
  const twice = remainder * 2n;
  if (twice < denominator) return quotient;
  if (twice > denominator) return quotient + 1n;
  return quotient % 2n === 0n ? quotient : quotient + 1n;
}

/**
 * |x|·10^decimals rounded to a whole number, decided on the decimal number that x stands for.
 * Source: arithmetic. `decimals` is the last digit kept, negative for tens and hundreds. Unit: that of x.
 * Range: finite x (see `decimalOf`).
 */
export function scaledInteger(x: number, decimals: number, rounding: Rounding = "half-even"): bigint {
  const { digits, decimals: own } = decimalOf(x);
  const shift = decimals - own;
  return shift >= 0 ? digits * powerOfTen(shift) : roundRatio(digits, powerOfTen(-shift), rounding);
}

/**
 * ±digits·10^−decimals as plain ASCII text; zero carries no sign. Source: notation; unit: that of the number.
 * Range: digits ≥ 0; decimals ≤ 0 writes zeros in place of what was rounded away. No error cases.
 */
export function writeDecimal(digits: bigint, decimals: number, negative: boolean): string {
  const sign = negative && digits !== 0n ? "-" : "";
  if (decimals <= 0) return `${sign}${digits === 0n ? "0" : `${digits}${"0".repeat(-decimals)}`}`;
  const text = `${digits}`.padStart(decimals + 1, "0");
  return `${sign}${text.slice(0, -decimals)}.${text.slice(-decimals)}`;
}

/**
 * x with so many decimals (negative: rounded to tens, hundreds …), half to even on the decimal number that x stands
 * for, as plain ASCII text. Source: ISO 80000-1:2009, annex B, rule A (from memory). Unit: that of x.
 * What is not a finite number comes back as its own name ("NaN", "-Infinity"), visibly.
 */
export function roundHalfEven(x: number, decimals: number): string {
  if (!Number.isFinite(x)) return `${x}`;
  return writeDecimal(scaledInteger(x, decimals), decimals, x < 0);
}

/**
 * The power of ten of the leading digit: 3 for 1000, −2 for 0.0999. Source: notation; no unit.
 * Range: x finite and not 0 (0 has no leading digit; it gives 0).
 */
export function decimalExponent(x: number): number {
  const { digits, decimals } = decimalOf(x);
  return `${digits}`.length - 1 - decimals;
}
