/** Σ cᵢ·xⁱ by Horner's scheme: only + and ×, so the same bits in every engine. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) value = value * x + (coefficients[i] ?? 0);
  return value;
}

/** d/dx Σ cᵢ·xⁱ = Σ i·cᵢ·xⁱ⁻¹. */
export function polynomialSlope(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 1; i -= 1) value = value * x + i * (coefficients[i] ?? 0);
  return value;
}
