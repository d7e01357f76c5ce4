const MINUS = "\u2212";
const THIN_NO_BREAK_SPACE = "\u202f";

/**
 * Plain ASCII number as set on a document: a true minus, and groups of three by a thin no-break space
 * where there are five integer digits or more (four stay together: 1000, but 36 229).
 */
export function typeset(plain: string): string {
  const parts = /^(-?)(\d+)(\.\d+)?$/.exec(plain);
  if (!parts) return plain;
  const [, sign, whole = "", rest = ""] = parts;
  const grouped = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, THIN_NO_BREAK_SPACE);
  return `${sign ? MINUS : ""}${grouped}${rest}`;
}
