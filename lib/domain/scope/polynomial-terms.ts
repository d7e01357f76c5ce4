const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** "0.5 + 0.001·t + 2e-7·t²". */
export const polynomialTerms = (coefficients: readonly number[]): string =>
  coefficients
    .map((value, power) => (power === 0 ? `${value}` : `${value}·t${power === 1 ? "" : superscripts[power]}`))
    .join(" + ");
