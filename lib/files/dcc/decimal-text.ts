/** The D-SI's decimal: a point, no comma, no thousands; NaN where a value is not known. */
const shape = /^([+-]?)(\d*\.\d+|\d+\.?\d*)(?:[Ee]([+-]?\d+))?$/;

export const isDecimal = (written: string): boolean => written === "NaN" || shape.test(written);

/** The number times ten to the `shift`, rounded once; null for NaN and for what is no decimal. */
export const decimalNumber = (written: string, shift = 0): number | null => {
  const match = shape.exec(written);
  if (!match) return null;
  return Number(`${match[1]}${match[2]}e${Number(match[3] ?? 0) + shift}`);
};

/** Half a unit of the last digit written, times ten to the `shift`: what rounding alone may hide. */
export const halfLastDigit = (written: string, shift = 0): number => {
  const match = shape.exec(written);
  if (!match) return 0;
  const decimals = (match[2] ?? "").split(".")[1]?.length ?? 0;
  return Number(`5e${Number(match[3] ?? 0) + shift - decimals - 1}`);
};
