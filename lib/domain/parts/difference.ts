import { reportValue } from "@/lib/metrology/reporting/report-value";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { MeasuredPoint } from "../evidence/evaluation";
import { pointEffects } from "../evidence/point-effects";

export type Difference = {
  /** Later minus earlier error, °C. */
  readonly celsius: number;
  /** U of the difference, k = 2, °C. */
  readonly expandedCelsius: number;
  /** |difference| ≤ U of the difference. */
  readonly agrees: boolean;
  readonly printed: { readonly celsius: string; readonly expandedCelsius: string };
};

/** The certificate of a reference has one error, whenever it is used: it acts on both and drops out of their difference. */
const isOfReferenceCertificate = (key: string): boolean => key.startsWith("reference.calibration");

const referencesOf = (point: MeasuredPoint): string =>
  point.references
    .map(({ reference }) => reference)
    .toSorted()
    .join(" ");

/** Sum of squares of what does not drop out, °C². The rest counts in full: nothing else is known to be shared. */
const ownVariance = (point: MeasuredPoint, dropsOut: boolean): number => {
  const combined = point.expandedCelsius / point.coverageFactor;
  if (!dropsOut) return combined * combined;
  const shared = pointEffects(point)
    .filter(({ key }) => isOfReferenceCertificate(key))
    .reduce((sum, { effect }) => sum + (effect / point.seebeckMicrovoltPerCelsius) ** 2, 0);
  return Math.max(0, combined * combined - shared);
};

/**
 * What changed between two measurements of one sensor at one setpoint, with U for k = 2. Against the same references
 * the U of their certificates drops out; taking it in would let two results agree that do not.
 */
export const differenceOf = (earlier: MeasuredPoint, later: MeasuredPoint): Difference => {
  const dropsOut = referencesOf(earlier) === referencesOf(later);
  const celsius = later.errorCelsius - earlier.errorCelsius;
  const expandedCelsius = 2 * Math.sqrt(ownVariance(earlier, dropsOut) + ownVariance(later, dropsOut));
  const reported = reportValue(celsius, expandedCelsius, 2);
  return {
    celsius,
    expandedCelsius,
    agrees: Math.abs(celsius) <= expandedCelsius,
    printed: reported.ok
      ? { celsius: typeset(reported.value.value), expandedCelsius: typeset(reported.value.expanded) }
      : { celsius: "", expandedCelsius: "" },
  };
};
