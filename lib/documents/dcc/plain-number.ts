/**
 * Numbers of a content are set for people (true minus, groups of three, perhaps a decimal comma); the D-SI wants "-0.24".
 * Only the notation changes here, digit for digit; a change of unit is exact, or says how many decimals it keeps.
 */
export const plainNumber = (typeset: string): string =>
  typeset
    .trim()
    .replace(/^\u2212/, "-")
    .replace(/[\u202f\u00a0\u2009 ]/g, "")
    .replace(",", ".");

const shape = /^(-?)(\d+)(?:\.(\d+))?$/;

type Scaled = { readonly digits: bigint; readonly decimals: number };

const scaled = (plain: string): Scaled | null => {
  const match = shape.exec(plain);
  if (!match) return null;
  const [, sign, whole = "", rest = ""] = match;
  const digits = BigInt(whole + rest);
  return { digits: sign ? -digits : digits, decimals: rest.length };
};

const written = ({ digits, decimals }: Scaled): string => {
  const size = (digits < 0n ? -digits : digits).toString().padStart(decimals + 1, "0");
  const [whole, rest] = [size.slice(0, size.length - decimals), size.slice(size.length - decimals)];
  return `${digits < 0n ? "-" : ""}${whole}${rest === "" ? "" : `.${rest}`}`;
};

const tenTo = (power: number): bigint => 10n ** BigInt(power);

/** The same quantity in a unit 10^`places` times larger, every digit kept: µV to V with 6. What is no plain number stays. */
export const inLargerUnit = (plain: string, places: number): string => {
  const number = scaled(plain);
  return number ? written({ digits: number.digits, decimals: number.decimals + places }) : plain;
};

/** t/°C + 273.15, exactly. */
export const celsiusInKelvin = (plain: string): string => {
  const number = scaled(plain);
  if (!number) return plain;
  const decimals = Math.max(number.decimals, 2);
  const digits = number.digits * tenTo(decimals - number.decimals) + 27315n * tenTo(decimals - 2);
  return written({ digits, decimals });
};

/** Ninths of `value`, to so many decimals; half away from zero, and a half cannot occur in ninths of a decimal. */
const ninths = (digits: bigint, decimals: number, keep: number): string => {
  const top = digits * tenTo(keep);
  const size = ((top < 0n ? -top : top) * 2n + 9n) / 18n;
  return written({ digits: top < 0n ? -size : size, decimals: decimals + keep });
};

/** A difference in °F as one in kelvin: five ninths, with three decimals more than were written. */
export const fahrenheitDifferenceInKelvin = (plain: string): string => {
  const number = scaled(plain);
  return number ? ninths(number.digits * 5n, number.decimals, 3) : plain;
};

/** (t/°F + 459.67) · 5/9, with three decimals more than were written, at least five. */
export const fahrenheitInKelvin = (plain: string): string => {
  const number = scaled(plain);
  if (!number) return plain;
  const decimals = Math.max(number.decimals, 2);
  const digits = number.digits * tenTo(decimals - number.decimals) + 45967n * tenTo(decimals - 2);
  return ninths(digits * 5n, decimals, 3);
};
