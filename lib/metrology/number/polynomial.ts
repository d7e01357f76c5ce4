/**
 * Σ cᵢ·xⁱ by Horner's scheme (Knuth, The Art of Computer Programming 2, 4.6.4): only + and ×, so the same
 * bits in every engine. In the unit of c₀. No coefficients: 0. x that is not a number comes back as NaN.
 */
export function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) value = value * x + (coefficients[i] as number);
  return value;
}

/** d/dx Σ cᵢ·xⁱ = Σ i·cᵢ·xⁱ⁻¹ by Horner's scheme, in the unit of c over that of x. Fewer than two coefficients: 0; NaN
 * stays NaN. */
export function polynomialSlope(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 1; i -= 1) value = value * x + i * (coefficients[i] as number);
  return value;
}

/** d²/dx² Σ cᵢ·xⁱ = Σ i·(i − 1)·cᵢ·xⁱ⁻² by Horner's scheme, in the unit of c over that of x squared.
 * Fewer than three coefficients: 0; NaN stays NaN. */
export function polynomialCurvature(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 2; i -= 1) {
    value = value * x + i * (i - 1) * (coefficients[i] as number);
  }
  return value;
}
