import { compensatedPolynomial } from "../number/compensated-polynomial";
import { exponential } from "../number/exponential";
import { type PolynomialBlock, polynomialBlock, polynomialsAt } from "../number/polynomial-block";
import type { ReferenceFunction } from "./reference-function";

const MICROVOLT_PER_MILLIVOLT = 1000;

/** The direct function laid out for many values at once: all pieces side by side, numbered from 0. */
export type DirectBlock = {
  readonly polynomials: PolynomialBlock;
  readonly pieces: ReferenceFunction["pieces"];
  readonly hasGaussian: boolean;
  /** Below it the first piece is summed with twice the digits; −∞ where none is. */
  readonly compensatedBelowCelsius: number;
  /** One number a piece: height in mV (0 without a Gaussian), exponent per °C², centre in °C. */
  readonly heights: Float64Array;
  readonly exponents: Float64Array;
  readonly centres: Float64Array;
};

const blocks = new WeakMap<ReferenceFunction, DirectBlock>();

/** The layout of a reference function, made when first asked for and kept with it. */
export function directBlock(reference: ReferenceFunction): DirectBlock {
  const known = blocks.get(reference);
  if (known) return known;
  const gaussians = reference.pieces.map(
    (piece) => piece.gaussian ?? { millivolt: 0, perSquareCelsius: 0, centreCelsius: 0 },
  );
  const block = {
    polynomials: polynomialBlock(reference.pieces.map((piece) => piece.millivolt)),
    pieces: reference.pieces,
    compensatedBelowCelsius: reference.pieces[0].compensatedBelowCelsius ?? Number.NEGATIVE_INFINITY,
    hasGaussian: gaussians.some((gaussian) => gaussian.millivolt !== 0),
    heights: Float64Array.from(gaussians, (gaussian) => gaussian.millivolt),
    exponents: Float64Array.from(gaussians, (gaussian) => gaussian.perSquareCelsius),
    centres: Float64Array.from(gaussians, (gaussian) => gaussian.centreCelsius),
  };
  blocks.set(reference, block);
  return block;
}

/**
 * microvolt[i] = E(t) in µV of piece which[i] at celsius[i] (°C), for i < count: NIST Monograph 175, the same bits as
 * `pieceEmf`. No range is checked. The arrays hold count values rounded up to a multiple of four.
 */
export function emfsAt(
  block: DirectBlock,
  which: Int32Array,
  celsius: Float64Array,
  microvolt: Float64Array,
  count: number,
): void {
  polynomialsAt(block.polynomials, which, celsius, microvolt, count);
  const { pieces, compensatedBelowCelsius, heights, exponents, centres, hasGaussian } = block;
  for (let i = 0; i < count; i += 1) {
    let millivolt = microvolt[i] as number;
    const t = celsius[i] as number;
    if (t < compensatedBelowCelsius) millivolt = compensatedPolynomial(pieces[0].millivolt, t);
    if (hasGaussian) {
      const piece = which[i] as number;
      const d = t - (centres[piece] as number);
      millivolt += (heights[piece] as number) * exponential((exponents[piece] as number) * d * d);
    }
    microvolt[i] = millivolt * MICROVOLT_PER_MILLIVOLT;
  }
}
