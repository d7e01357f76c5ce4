import { decimalExponent, powerOfTen, scaledInteger, writeDecimal } from "../number/decimal";
import { found, type Outcome, refused } from "../outcome";
import { applyCmc } from "./apply-cmc";

export type RoundedUncertainty = {
  readonly text: string;
  /** Decimals of its last digit; −1 means tens. */
  readonly decimals: number;
};

/** Significant digits of U: one or two, by the laboratory's policy and the customer's wish. */
export type UncertaintyDigits = 1 | 2;

/** Rounding down may hide at most this share of U; more, and it is rounded up. */
const LARGEST_LOSS_PERCENT = 5n;

/** More decimals than the printed ones: a float64 has at most 17 digits, so 18 keep all that it says beside them. */
const FINE_DECIMALS = 18;

/**
 * U to one or two significant digits (ILAC-P14:09/2020, 5: at most two), half to even on the decimal number that U
 * stands for. If that lowers U by more than 5 % it is rounded up instead (EA-4/02, 6.3, from memory; laboratory policy);
 * at two digits the loss never exceeds 4.8 %, so this bites at one digit only.
 * Symbols: `expanded` = U, `capability` = CMC or null; units: any, the same. The printed U is never below the CMC either:
 * 0.444 against a CMC of 0.444 prints 0.45, not 0.44.
 * Refused: U or CMC not finite, or not above 0.
 */
export function roundUncertainty(
  expanded: number,
  digits: UncertaintyDigits,
  capability: number | null = null,
): Outcome<RoundedUncertainty> {
  if (digits !== 1 && digits !== 2) {
    return refused("outside-range", `${digits} digits of U: one or two are printed`);
  }
  const reported = applyCmc(expanded, capability);
  if (!reported.ok) return reported;
  const u = reported.value.expanded;
  let decimals = digits - 1 - decimalExponent(u);
  let rounded = roundedUnlessTooLow(u, decimals, capability);
  // 0.0999 becomes 0.100: a digit too many once the carry has gone through.
  if (`${rounded}`.length > digits) {
    decimals -= 1;
    rounded /= 10n;
  }
  return found({ text: writeDecimal(rounded, decimals, false), decimals });
}

function roundedUnlessTooLow(u: number, decimals: number, capability: number | null): bigint {
  const fine = (x: number) => scaledInteger(x, decimals + FINE_DECIMALS);
  const nearest = scaledInteger(u, decimals);
  const printed = nearest * powerOfTen(FINE_DECIMALS);
  const isTooLow = printed * 100n < fine(u) * (100n - LARGEST_LOSS_PERCENT);
  const isBelowCapability = capability !== null && printed < fine(capability);
  return isTooLow || isBelowCapability ? scaledInteger(u, decimals, "away") : nearest;
}
