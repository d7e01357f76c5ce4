import { compensatedPolynomial } from "../number/compensated-polynomial";
import { exponential } from "../number/exponential";
import { polynomial } from "../number/polynomial";
import { found, type Outcome } from "../outcome";
import { type Piece, pieceAt, type ReferenceFunction } from "./reference-function";
import { refuseTemperature } from "./refuse-temperature";

const MICROVOLT_PER_MILLIVOLT = 1000;

/**
 * E(t) in µV of one piece, t in °C, reference junction at 0 °C: NIST Monograph 175 (1993), for type K with
 * its Gaussian. No range is checked; a NaN stays one. Rounding: some units in the last place, more where the
 * terms cancel (1e-8 µV for types E and T below −200 °C).
 */
export function pieceEmf(piece: Piece, celsius: number): number {
  const isCompensated =
    piece.compensatedBelowCelsius !== undefined && celsius < piece.compensatedBelowCelsius;
  let millivolt = isCompensated
    ? compensatedPolynomial(piece.millivolt, celsius)
    : polynomial(piece.millivolt, celsius);
  if (piece.gaussian) {
    const d = celsius - piece.gaussian.centreCelsius;
    millivolt += piece.gaussian.millivolt * exponential(piece.gaussian.perSquareCelsius * d * d);
  }
  return millivolt * MICROVOLT_PER_MILLIVOLT;
}

/**
 * E(t) in µV, t in °C (ITS-90), reference junction at 0 °C: NIST SRD 60 = NIST Monograph 175 (1993) = IEC
 * 60584-1:2013 for the letter types; the other types' files name theirs. At a join the lower piece holds.
 * Problems: `not-finite`; `outside-range` beyond the range of the function.
 */
export function emf(reference: ReferenceFunction, celsius: number): Outcome<number> {
  const piece = pieceAt(reference, celsius);
  if (piece) return found(pieceEmf(piece, celsius));
  return refuseTemperature(reference, celsius);
}
