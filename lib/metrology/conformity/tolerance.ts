import type { ThermocoupleType } from "../thermocouple/reference-functions";
import { iec60584 } from "./iec-60584-1";
import { type Tolerance, toleranceIn } from "./tolerance-in";

export type ToleranceClass = "1" | "2" | "3";

export const toleranceStandard = iec60584.title;

/**
 * Tolerance of IEC 60584-1:2013 at a temperature: half-width in °C, reference junction at 0 °C, `celsius` = t90 in °C; or
 * in words why the class has none there (its range has ended, the type has no such class, t is not a number).
 * Other standards and a customer's own limits: `toleranceIn` with their rule set.
 */
export function tolerance(
  type: ThermocoupleType,
  toleranceClass: ToleranceClass,
  celsius: number,
): Tolerance {
  return toleranceIn(iec60584, type, toleranceClass, celsius);
}
