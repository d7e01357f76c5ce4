import { decimalExponent, scaledInteger, writeDecimal } from "../number/decimal";
import { found, type Outcome, refused } from "../outcome";

export type RoundedUncertainty = {
  readonly text: string;
  /** Decimals of its last digit; −1 means tens. */
  readonly decimals: number;
};

/** Rounding down may hide at most this share of U; more, and it is rounded up. */
const LARGEST_LOSS_PERCENT = 5n;

/**
 * U to one or two significant digits (ILAC-P14:09/2020, 5: at most two), half to even on the exact
 * decimal value. If that lowers U by more than 5 % it is rounded up instead (older EA rule, laboratory
 * policy); at two digits the loss never exceeds 4.8 %, so this bites at one digit only.
 */
export function roundUncertainty(expanded: number, digits: 1 | 2): Outcome<RoundedUncertainty> {
  if (!Number.isFinite(expanded)) return refused("not-finite", `U = ${expanded} is not a number`);
  if (!(expanded > 0)) return refused("outside-range", `U = ${expanded}: an uncertainty must be above zero`);
  let decimals = digits - 1 - decimalExponent(expanded);
  let rounded = roundedUnlessTooLow(expanded, decimals);
  // 0.0999 becomes 0.100: a digit too many once the carry has gone through.
  if (`${rounded}`.length > digits) {
    decimals -= 1;
    rounded /= 10n;
  }
  return found({ text: writeDecimal(rounded, decimals, false), decimals });
}

function roundedUnlessTooLow(expanded: number, decimals: number): bigint {
  const nearest = scaledInteger(expanded, decimals);
  // Nine more decimals than the printed ones: enough to tell 5 % from less.
  const fine = scaledInteger(expanded, decimals + 9);
  const isTooLow = nearest * 1_000_000_000n * 100n < fine * (100n - LARGEST_LOSS_PERCENT);
  return isTooLow ? scaledInteger(expanded, decimals, "away") : nearest;
}
