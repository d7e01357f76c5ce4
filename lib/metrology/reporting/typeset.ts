const MINUS = "\u2212";
const THIN_NO_BREAK_SPACE = "\u202f";

/**
 * Plain ASCII number as set on a document: a true minus, and groups of three by a thin no-break space
 * where there are five integer digits or more (four stay together: 1000, but 36 229). Source: SI Brochure, 9th edition
 * (2019), 5.4.4 (from memory). No unit. Text that is no plain number, such as "NaN", comes back as it was.
 */
export function typeset(plain: string): string {
  const parts = /^(-?)(\d+)(\.\d+)?$/.exec(plain);
  if (!parts) return plain;
  // The groups of the pattern: the first two always match, the last may not.
  const [, sign, whole, rest = ""] = parts as unknown as [string, string, string, string?];
  const grouped = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, THIN_NO_BREAK_SPACE);
  return `${sign ? MINUS : ""}${grouped}${rest}`;
}
