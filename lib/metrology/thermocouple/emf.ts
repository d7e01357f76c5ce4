import { exponential } from "../number/exponential";
import { polynomial } from "../number/polynomial";
import { found, type Outcome, refused } from "../outcome";
import { describeRange, type Piece, pieceAt, type ReferenceFunction } from "./reference-function";

const MICROVOLT_PER_MILLIVOLT = 1000;

export function pieceEmf(piece: Piece, celsius: number): number {
  let millivolt = polynomial(piece.millivolt, celsius);
  if (piece.gaussian) {
    const d = celsius - piece.gaussian.centreCelsius;
    millivolt += piece.gaussian.millivolt * exponential(piece.gaussian.perSquareCelsius * d * d);
  }
  return millivolt * MICROVOLT_PER_MILLIVOLT;
}

/** E(t) in µV, reference junction at 0 °C. Outside the range of the function: a problem. */
export function emf(reference: ReferenceFunction, celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `temperature ${celsius} is not a number`);
  const piece = pieceAt(reference, celsius);
  if (!piece) return refused("outside-range", `${celsius} °C: ${describeRange(reference)}`);
  return found(pieceEmf(piece, celsius));
}
