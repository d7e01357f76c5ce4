/** A float64 is exactly ±mantissa·2^exponent; every finite one has a finite decimal expansion. */
type Binary = { readonly negative: boolean; readonly mantissa: bigint; readonly exponent: number };

function toBinary(x: number): Binary {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const bits = view.getBigUint64(0);
  const biased = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & 0xfffffffffffffn;
  return {
    negative: bits >> 63n === 1n,
    mantissa: biased === 0 ? fraction : fraction | 0x10000000000000n,
    exponent: (biased === 0 ? 1 : biased) - 1075,
  };
}

/** |x|·10^decimals as an exact fraction. */
function scaled(x: number, decimals: number): { readonly numerator: bigint; readonly denominator: bigint } {
  const { mantissa, exponent } = toBinary(x);
  let numerator = mantissa;
  let denominator = 1n;
  if (exponent >= 0) numerator <<= BigInt(exponent);
  else denominator <<= BigInt(-exponent);
  let power = 1n;
  for (let n = Math.abs(decimals); n > 0; n -= 1) power *= 10n;
  if (decimals >= 0) numerator *= power;
  else denominator *= power;
  return { numerator, denominator };
}

export type Rounding = "half-even" | "away";

/** |x|·10^decimals rounded to a whole number, decided on the exact expansion and not on a rounded product. */
export function scaledInteger(x: number, decimals: number, rounding: Rounding = "half-even"): bigint {
  const { numerator, denominator } = scaled(x, decimals);
  const quotient = numerator / denominator;
  const remainder = numerator % denominator;
  if (remainder === 0n) return quotient;
  if (rounding === "away") return quotient + 1n;
  const twice = remainder * 2n;
  if (twice < denominator) return quotient;
  if (twice > denominator) return quotient + 1n;
  return quotient % 2n === 0n ? quotient : quotient + 1n;
}

/** Writes digits·10^−decimals; zero carries no sign. */
export function writeDecimal(digits: bigint, decimals: number, negative: boolean): string {
  const sign = negative && digits !== 0n ? "-" : "";
  if (decimals <= 0) return `${sign}${digits === 0n ? "0" : `${digits}${"0".repeat(-decimals)}`}`;
  const text = `${digits}`.padStart(decimals + 1, "0");
  return `${sign}${text.slice(0, -decimals)}.${text.slice(-decimals)}`;
}

/** x with so many decimals (negative: rounded to tens, hundreds …), half to even, as plain ASCII text. */
export function roundHalfEven(x: number, decimals: number): string {
  if (!Number.isFinite(x)) return `${x}`;
  return writeDecimal(scaledInteger(x, decimals), decimals, x < 0);
}

/** The power of ten of the leading digit: 3 for 1000, −2 for 0.0999. x must be finite and not 0. */
export function decimalExponent(x: number): number {
  const { numerator, denominator } = scaled(x, 0);
  // Estimate from the digit counts, then correct by exact comparison.
  let exponent = `${numerator}`.length - `${denominator}`.length;
  let power = 1n;
  for (let n = Math.abs(exponent); n > 0; n -= 1) power *= 10n;
  const isBelow = exponent >= 0 ? numerator < denominator * power : numerator * power < denominator;
  if (isBelow) exponent -= 1;
  return exponent;
}
