import type { MeasuredPoint } from "../evidence/evaluation";
import type { ResultName } from "./result-name";

/** What the sensor's last standing certificate says of it at this setpoint, as printed there. */
export type EarlierResult = ResultName & {
  readonly errorCelsius: number;
  readonly expandedCelsius: number;
  readonly coverageFactor: number;
  readonly certificate: string;
  readonly performedTo: string;
};

export type DifferenceToEarlier = {
  /** Now minus then. */
  readonly celsius: number;
  /** U of both, combined as if nothing were common to them: √(U₁² + U₂²). */
  readonly expandedCelsius: number;
  /** |difference| over its U, the form of E_n (ISO 13528:2022, 9.7; from memory): above 1 it wants a reason. */
  readonly ratio: number;
};

export const differenceToEarlier = (
  point: Pick<MeasuredPoint, "errorCelsius" | "expandedCelsius">,
  earlier: Pick<EarlierResult, "errorCelsius" | "expandedCelsius">,
): DifferenceToEarlier => {
  const celsius = point.errorCelsius - earlier.errorCelsius;
  const expandedCelsius = Math.hypot(point.expandedCelsius, earlier.expandedCelsius);
  return { celsius, expandedCelsius, ratio: Math.abs(celsius) / expandedCelsius };
};
