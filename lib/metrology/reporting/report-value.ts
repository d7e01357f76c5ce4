import { roundHalfEven } from "../number/decimal";
import { found, type Outcome, refused } from "../outcome";
import { roundUncertainty, type UncertaintyDigits } from "./round-uncertainty";

export type ReportedValue = {
  readonly value: string;
  readonly expanded: string;
  /** Decimals both were rounded to; −1 means tens. */
  readonly decimals: number;
};

/**
 * A value with its U, rounded together and once: U first, then the value to the last digit of U (JCGM 100:2008, 7.2.6;
 * ILAC-P14:09/2020, 5). Half to even on the decimal numbers that both stand for, so no binary digit is ever printed.
 * Symbols: `value` = y, `expanded` = U, `digits` = significant digits of U, `capability` = CMC at the point or null;
 * units: any, all three the same. Refused: a number that is not finite, U or CMC not above 0.
 */
export function reportValue(
  value: number,
  expanded: number,
  digits: UncertaintyDigits,
  capability: number | null = null,
): Outcome<ReportedValue> {
  if (!Number.isFinite(value)) return refused("not-finite", `${value} is not a number`);
  const uncertainty = roundUncertainty(expanded, digits, capability);
  if (!uncertainty.ok) return uncertainty;
  const { text, decimals } = uncertainty.value;
  return found({ value: roundHalfEven(value, decimals), expanded: text, decimals });
}
