import { compensatedPolynomial } from "../number/compensated-polynomial";
import { exponential } from "../number/exponential";
import { type PolynomialBlock, polynomialBlock, polynomialsAt } from "../number/polynomial-block";
import type { Piece, ReferenceFunction } from "./reference-function";

const MICROVOLT_PER_MILLIVOLT = 1000;

/** The direct function laid out for many values at once: all pieces side by side, numbered from 0. */
export type DirectBlock = {
  readonly polynomials: PolynomialBlock;
  readonly hasGaussian: boolean;
  /** Below it the first piece is summed with twice the digits; −∞ where none is. */
  readonly compensatedBelowCelsius: number;
  readonly firstPolynomial: readonly number[];
  /** One number a piece: height in mV, 0 without the Gaussian. */
  readonly heights: Float64Array;
  /** The one Gaussian's exponent per °C² and its centre in °C; 0 without. */
  readonly perSquareCelsius: number;
  readonly centreCelsius: number;
};

const blocks = new WeakMap<ReferenceFunction, DirectBlock>();

/**
 * The layout of a reference function (source: the function's own file; polynomials for t in °C, units of mV),
 * made when first asked for and kept with it. No error cases.
 */
export function directBlock(reference: ReferenceFunction): DirectBlock {
  const known = blocks.get(reference);
  if (known) return known;
  const pieces: readonly Piece[] = reference.pieces;
  const gaussian = pieces.find((piece) => piece.gaussian)?.gaussian ?? null;
  const block = {
    polynomials: polynomialBlock(pieces.map((piece) => piece.millivolt)),
    firstPolynomial: reference.pieces[0].millivolt,
    compensatedBelowCelsius: reference.pieces[0].compensatedBelowCelsius ?? Number.NEGATIVE_INFINITY,
    hasGaussian: gaussian !== null,
    heights: Float64Array.from(pieces, (piece) => (piece.gaussian ? piece.gaussian.millivolt : 0)),
    perSquareCelsius: gaussian ? gaussian.perSquareCelsius : 0,
    centreCelsius: gaussian ? gaussian.centreCelsius : 0,
  };
  blocks.set(reference, block);
  return block;
}

/**
 * microvolt[begin + i] = E(t) in µV of piece which[i] at celsius[begin + i] (°C), for i < count: NIST
 * Monograph 175, the same bits as `pieceEmf`. No range is checked. count is a multiple of four, and all
 * arrays reach that far.
 */
export function emfsAt(
  block: DirectBlock,
  which: Int32Array,
  celsius: Float64Array,
  microvolt: Float64Array,
  begin: number,
  count: number,
): void {
  // With a Gaussian to come the polynomial stays in mV, so that the sum is rounded as `pieceEmf` rounds it.
  const scale = block.hasGaussian ? 1 : MICROVOLT_PER_MILLIVOLT;
  polynomialsAt(block.polynomials, which, celsius, microvolt, begin, count, scale);
  if (block.hasGaussian) addGaussians(block, which, celsius, microvolt, begin, count);
  if (block.compensatedBelowCelsius > Number.NEGATIVE_INFINITY) {
    compensate(block, celsius, microvolt, begin, count);
  }
}

function addGaussians(
  block: DirectBlock,
  which: Int32Array,
  celsius: Float64Array,
  values: Float64Array,
  begin: number,
  count: number,
): void {
  const { heights, perSquareCelsius, centreCelsius } = block;
  // Bound once: a name from another file is slow in a hot loop.
  const power = exponential;
  for (let i = 0; i < count; i += 1) {
    const d = (celsius[begin + i] as number) - centreCelsius;
    const gaussian = (heights[which[i] as number] as number) * power(perSquareCelsius * d * d);
    values[begin + i] = ((values[begin + i] as number) + gaussian) * MICROVOLT_PER_MILLIVOLT;
  }
}

/** No type has both a Gaussian and terms that cancel so far. */
function compensate(
  block: DirectBlock,
  celsius: Float64Array,
  microvolt: Float64Array,
  begin: number,
  count: number,
): void {
  const { compensatedBelowCelsius, firstPolynomial } = block;
  for (let i = begin; i < begin + count; i += 1) {
    const t = celsius[i] as number;
    if (t < compensatedBelowCelsius) {
      microvolt[i] = compensatedPolynomial(firstPolynomial, t) * MICROVOLT_PER_MILLIVOLT;
    }
  }
}
