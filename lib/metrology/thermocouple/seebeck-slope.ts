import { exponential } from "../number/exponential";
import { polynomialCurvature } from "../number/polynomial";
import { found, type Outcome } from "../outcome";
import { type Piece, pieceAt, type ReferenceFunction } from "./reference-function";
import { refuseTemperature } from "./refuse-temperature";

const MICROVOLT_PER_MILLIVOLT = 1000;

function pieceSeebeckSlope(piece: Piece, celsius: number): number {
  let millivolt = polynomialCurvature(piece.millivolt, celsius);
  if (piece.gaussian) {
    const { millivolt: height, perSquareCelsius: a, centreCelsius } = piece.gaussian;
    const square = (celsius - centreCelsius) * (celsius - centreCelsius);
    millivolt += height * 2 * a * (1 + 2 * a * square) * exponential(a * square);
  }
  return millivolt * MICROVOLT_PER_MILLIVOLT;
}

/**
 * S′(t) = d²E/dt² in µV/°C², t in °C: the second derivative of the direct function of NIST Monograph 175 (or
 * of the source that the type's file names), for the second-order term ½·S′·Δt² of a carry over Δt (type K at
 * 1000 °C: −0.0105 µV/°C², so 0.13 µV at 5 °C). At a join the lower piece holds.
 * Problems: `not-finite`; `outside-range` beyond the range of the function.
 */
export function seebeckSlope(reference: ReferenceFunction, celsius: number): Outcome<number> {
  const piece = pieceAt(reference, celsius);
  if (piece) return found(pieceSeebeckSlope(piece, celsius));
  return refuseTemperature(reference, celsius);
}
