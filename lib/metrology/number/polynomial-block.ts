/**
 * Coefficients of one polynomial in a block: highest power first, with zeros before it where the degree is
 * less.
 */
export const BLOCK_STRIDE = 16;

export type PolynomialBlock = {
  /** The polynomials one after the other, BLOCK_STRIDE places each, of which the first `length` are used. */
  readonly coefficients: Float64Array;
  readonly length: number;
};

/**
 * Polynomials of at most 15th degree laid out for `polynomialsAt`. Each list of coefficients begins with the
 * constant term.
 * Zeros put before the highest power change no bit of Horner's scheme (source and units: `polynomialsAt`).
 * The caller keeps to that degree; no error cases.
 */
export function polynomialBlock(polynomials: readonly (readonly number[])[]): PolynomialBlock {
  const length = polynomials.reduce((longest, list) => Math.max(longest, list.length), 0);
  const coefficients = new Float64Array(polynomials.length * BLOCK_STRIDE);
  polynomials.forEach((list, p) => {
    list.forEach((coefficient, power) => {
      coefficients[p * BLOCK_STRIDE + length - 1 - power] = coefficient;
    });
  });
  return { coefficients, length };
}

/**
 * result[begin + i] = scale × polynomial number which[i] of the block at x[begin + i], for i < count:
 * Horner's scheme (Knuth, The Art of Computer Programming 2, 4.6.4) for four values at a time, which saves
 * most of the loop's own cost. The same bits as `polynomial`, times the scale. count is a multiple of four,
 * and all arrays reach that far; the caller sees to both. Unit: that of coefficient × xⁱ × scale. NaN stays
 * NaN.
 */
export function polynomialsAt(
  block: PolynomialBlock,
  which: Int32Array,
  x: Float64Array,
  result: Float64Array,
  begin: number,
  count: number,
  scale: number,
): void {
  const { coefficients, length } = block;
  for (let i = 0; i < count; i += 4) {
    const at = begin + i;
    const x0 = x[at] as number;
    const x1 = x[at + 1] as number;
    const x2 = x[at + 2] as number;
    const x3 = x[at + 3] as number;
    // A shift, not a product: the engine would have to look for -0, and would guess wrong at each change of
    // piece.
    const at0 = (which[i] as number) << 4;
    const at1 = (which[i + 1] as number) << 4;
    const at2 = (which[i + 2] as number) << 4;
    const at3 = (which[i + 3] as number) << 4;
    let v0 = 0;
    let v1 = 0;
    let v2 = 0;
    let v3 = 0;
    for (let k = 0; k < length; k += 1) {
      v0 = v0 * x0 + (coefficients[at0 + k] as number);
      v1 = v1 * x1 + (coefficients[at1 + k] as number);
      v2 = v2 * x2 + (coefficients[at2 + k] as number);
      v3 = v3 * x3 + (coefficients[at3 + k] as number);
    }
    result[at] = v0 * scale;
    result[at + 1] = v1 * scale;
    result[at + 2] = v2 * scale;
    result[at + 3] = v3 * scale;
  }
}
