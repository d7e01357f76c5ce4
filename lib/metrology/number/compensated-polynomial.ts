/** 2^27 + 1, which splits a float64 into two halves of 26 bits (T. J. Dekker, Numer. Math. 18 (1971) 224). */
const SPLITTER = 134217729;

/**
 * Σ cᵢ·xⁱ as if computed with twice the digits and rounded once: Horner's scheme that carries along the exact
 * rounding error of each product (Dekker) and sum (Knuth). S. Graillat, P. Langlois, N. Louvet, Compensated
 * Horner Scheme (2005; reference from memory). Some ten times slower than `polynomial`; for sums whose terms
 * cancel. |x| and the terms below 1e290; the unit is that of c₀; no coefficients: 0; NaN stays NaN.
 */
export function compensatedPolynomial(coefficients: readonly number[], x: number): number {
  const xHigh = SPLITTER * x - (SPLITTER * x - x);
  const xLow = x - xHigh;
  let value = 0;
  let error = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) {
    const c = coefficients[i] as number;
    const product = value * x;
    const high = SPLITTER * value - (SPLITTER * value - value);
    const low = value - high;
    const productError = low * xLow - (product - high * xHigh - low * xHigh - high * xLow);
    const sum = product + c;
    const part = sum - product;
    const sumError = product - (sum - part) + (c - part);
    error = error * x + (productError + sumError);
    value = sum;
  }
  return value + error;
}
