import { exponential } from "../number/exponential";
import { polynomialSlope } from "../number/polynomial";
import { found, type Outcome } from "../outcome";
import { type Piece, pieceAt, type ReferenceFunction } from "./reference-function";
import { refuseTemperature } from "./refuse-temperature";

const MICROVOLT_PER_MILLIVOLT = 1000;

/**
 * S(t) = dE/dt in µV/°C of one piece, t in °C: the derivative of the polynomial by Horner's scheme and, for
 * type K, of the Gaussian a₀·exp[a₁(t − a₂)²]. No range is checked; a NaN stays one.
 */
export function pieceSeebeck(piece: Piece, celsius: number): number {
  let millivolt = polynomialSlope(piece.millivolt, celsius);
  if (piece.gaussian) {
    const { millivolt: height, perSquareCelsius, centreCelsius } = piece.gaussian;
    const d = celsius - centreCelsius;
    millivolt += height * 2 * perSquareCelsius * d * exponential(perSquareCelsius * d * d);
  }
  return millivolt * MICROVOLT_PER_MILLIVOLT;
}

/**
 * S(t) = dE/dt in µV/°C, t in °C: the derivative of the direct function of NIST Monograph 175 (or of the
 * source that the type's file names). At a join the lower piece holds; type N jumps at 0 °C from 26.159 to
 * 25.929 µV/°C.
 * Problems: `not-finite`; `outside-range` beyond the range of the function.
 */
export function seebeck(reference: ReferenceFunction, celsius: number): Outcome<number> {
  const piece = pieceAt(reference, celsius);
  if (piece) return found(pieceSeebeck(piece, celsius));
  return refuseTemperature(reference, celsius);
}
