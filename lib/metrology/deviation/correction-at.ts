import { found, type Outcome } from "../outcome";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { seebeck } from "../thermocouple/seebeck";
import { deviationAt } from "./deviation-at";
import type { DeviationFunction } from "./deviation-function";

export type CorrectionAt = {
  readonly celsius: number;
  /** E_X − E_table, µV. */
  readonly deviationMicrovolt: number;
  /** Indication − reference, °C: D/S(t). */
  readonly errorCelsius: number;
  /** What is added to an indication to get the temperature, °C: −error. */
  readonly correctionCelsius: number;
  readonly standardUncertaintyCelsius: number;
  readonly isBelowMeasured: boolean;
};

/**
 * The correction a deviation function gives at t: error = D/S(t), correction = −error (sign: JCGM 200:2012, 2.53; D/S
 * differs from the exact inverse by 0.003 °C for 186 µV of type K). t in °C within the function's range.
 * Problems: those of `deviationAt`, and of `seebeck` where the type's reference function ends.
 */
export function correctionAt(
  deviation: DeviationFunction,
  reference: ReferenceFunction,
  celsius: number,
): Outcome<CorrectionAt> {
  const at = deviationAt(deviation, celsius);
  if (!at.ok) return at;
  const slope = seebeck(reference, celsius);
  if (!slope.ok) return slope;
  const { value, standardUncertainty, isBelowMeasured } = at.value;
  const isEmf = deviation.quantity === "emf";
  const errorCelsius = isEmf ? value / slope.value : value;
  return found({
    celsius,
    deviationMicrovolt: isEmf ? value : value * slope.value,
    errorCelsius,
    // Zero minus, so that no correction reads "−0".
    correctionCelsius: 0 - errorCelsius,
    standardUncertaintyCelsius: isEmf ? standardUncertainty / slope.value : standardUncertainty,
    isBelowMeasured,
  });
}
