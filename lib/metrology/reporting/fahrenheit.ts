import { type Decimal, decimalOf, powerOfTen, roundRatio, writeDecimal } from "../number/decimal";
import { found, type Outcome, refused } from "../outcome";

/**
 * What is converted. `value`: a temperature, t_F = 1.8·t_C + 32. `difference`: an error, a correction, a tolerance or a
 * U, Δ_F = 1.8·Δ_C: adding 32 to one of those is the classic slip.
 */
export type FahrenheitQuantity = "value" | "difference";

type Fraction = { readonly numerator: bigint; readonly denominator: bigint };

const asFraction = ({ negative, digits, decimals }: Decimal): Fraction => ({
  numerator: (negative ? -digits : digits) * powerOfTen(Math.max(0, -decimals)),
  denominator: powerOfTen(Math.max(0, decimals)),
});

function write({ numerator, denominator }: Fraction, decimals: number): string {
  const negative = numerator < 0n;
  const magnitude = negative ? -numerator : numerator;
  const scaled = roundRatio(
    magnitude * powerOfTen(Math.max(0, decimals)),
    denominator * powerOfTen(Math.max(0, -decimals)),
    "half-even",
  );
  return writeDecimal(scaled, decimals, negative);
}

const notFinite = (x: number) => refused("not-finite", `${x} is not a number`);

/**
 * Degrees Celsius to degrees Fahrenheit as text with so many decimals: (9·C + 160)/5, or 9·Δ/5 for a difference, in whole
 * numbers with one rounding, half to even. The definition of the degree Fahrenheit, exact (NIST SP 811:2008, B.8, from
 * memory). °C in, °F out; negative decimals round to tens. Refused: what is not a finite number.
 */
export function fahrenheitText(
  celsius: number,
  decimals: number,
  quantity: FahrenheitQuantity,
): Outcome<string> {
  if (!Number.isFinite(celsius)) return notFinite(celsius);
  const { numerator, denominator } = asFraction(decimalOf(celsius));
  const offset = quantity === "value" ? 160n * denominator : 0n;
  return found(write({ numerator: 9n * numerator + offset, denominator: 5n * denominator }, decimals));
}

/**
 * Degrees Fahrenheit to degrees Celsius as text with so many decimals: 5·(F − 32)/9, or 5·Δ/9 for a difference, in whole
 * numbers with one rounding, half to even: 600 °F is 315.556 °C, and 315.555 555 555 555 6 °C is 600 °F again.
 * Source as `fahrenheitText`. °F in, °C out. Refused: what is not a finite number.
 */
export function celsiusText(
  fahrenheit: number,
  decimals: number,
  quantity: FahrenheitQuantity,
): Outcome<string> {
  if (!Number.isFinite(fahrenheit)) return notFinite(fahrenheit);
  const { numerator, denominator } = asFraction(decimalOf(fahrenheit));
  const offset = quantity === "value" ? 32n * denominator : 0n;
  return found(write({ numerator: 5n * (numerator - offset), denominator: 9n * denominator }, decimals));
}
