import { roundHalfEven } from "../number/decimal";
import { found, type Outcome, refused } from "../outcome";
import { roundUncertainty } from "./round-uncertainty";

export type ReportedValue = {
  readonly value: string;
  readonly expanded: string;
  /** Decimals both were rounded to; −1 means tens. */
  readonly decimals: number;
};

/** A value with its U, rounded together and once: U first, then the value to the last digit of U. */
export function reportValue(value: number, expanded: number, digits: 1 | 2): Outcome<ReportedValue> {
  if (!Number.isFinite(value)) return refused("not-finite", `${value} is not a number`);
  const uncertainty = roundUncertainty(expanded, digits);
  if (!uncertainty.ok) return uncertainty;
  const { text, decimals } = uncertainty.value;
  return found({ value: roundHalfEven(value, decimals), expanded: text, decimals });
}
