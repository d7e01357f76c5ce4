import { found, type Outcome } from "../outcome";
import { type Piece, pieceAt, type ReferenceFunction } from "../thermocouple/reference-function";
import { pieceSeebeck } from "../thermocouple/seebeck";
import { temperature } from "../thermocouple/temperature";
import { type CorrectionCurve, correctionValue } from "./correction-curve";

export type StandardTemperature = {
  readonly celsius: number;
  readonly deviationMicrovolt: number;
  /** S of the standard itself at t: the table's and the slope of its correction, µV/°C. */
  readonly seebeckMicrovoltPerCelsius: number;
  readonly interpolationCelsius: number;
};

/**
 * Temperature in °C that a standard shows by its emf in µV (reference junction at 0 °C): the t with E_table(t) + ΔE(t) = E,
 * ΔE from its certificate (the t_S(V) of EA-4/02 S5, found by solving the certificate's function).
 * Problems: those of `temperature`; `outside-range` when t lies beyond the certificate.
 */
export function standardTemperature(
  curve: CorrectionCurve,
  reference: ReferenceFunction,
  microvolt: number,
): Outcome<StandardTemperature> {
  const celsius = temperature(reference, microvolt, curve.added);
  if (!celsius.ok) return celsius;
  const correction = correctionValue(curve, celsius.value);
  if (!correction.ok) return correction;
  const { deviationMicrovolt, slopeMicrovoltPerCelsius, interpolationMicrovolt } = correction.value;
  // The solver finds temperatures within the reference function only.
  const piece = pieceAt(reference, celsius.value) as Piece;
  const slope = pieceSeebeck(piece, celsius.value) + slopeMicrovoltPerCelsius;
  return found({
    celsius: celsius.value,
    deviationMicrovolt,
    seebeckMicrovoltPerCelsius: slope,
    interpolationCelsius: interpolationMicrovolt / slope,
  });
}
