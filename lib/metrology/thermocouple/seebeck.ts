import { exponential } from "../number/exponential";
import { polynomialSlope } from "../number/polynomial";
import { found, type Outcome, refused } from "../outcome";
import { describeRange, type Piece, pieceAt, type ReferenceFunction } from "./reference-function";

const MICROVOLT_PER_MILLIVOLT = 1000;

export function pieceSeebeck(piece: Piece, celsius: number): number {
  let millivolt = polynomialSlope(piece.millivolt, celsius);
  if (piece.gaussian) {
    const { millivolt: height, perSquareCelsius, centreCelsius } = piece.gaussian;
    const d = celsius - centreCelsius;
    millivolt += height * 2 * perSquareCelsius * d * exponential(perSquareCelsius * d * d);
  }
  return millivolt * MICROVOLT_PER_MILLIVOLT;
}

/** S(t) = dE/dt in µV/°C, the derivative of the direct function. At a join the lower piece holds. */
export function seebeck(reference: ReferenceFunction, celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `temperature ${celsius} is not a number`);
  const piece = pieceAt(reference, celsius);
  if (!piece) return refused("outside-range", `${celsius} °C: ${describeRange(reference)}`);
  return found(pieceSeebeck(piece, celsius));
}
