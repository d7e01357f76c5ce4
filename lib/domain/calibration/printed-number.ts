/** A number as a document of ours prints it, with a true minus and spaces between groups; NaN where it is none. */
export const printedNumber = (printed: string): number => {
  const plain = printed.replaceAll(/\s/g, "").replaceAll("\u2212", "-");
  return /^[+-]?\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
};
