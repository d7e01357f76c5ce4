import type { DocumentLanguage } from "./document-language";

/*
 * How figures are set on a certificate (ISO 80000-1:2009, 7.3, and resolution 10 of the 22nd CGPM, 2003; both from
 * memory): the decimal sign is a point or a comma, by the leading language, and one for the whole document; digits are
 * grouped by a thin space, never by point or comma; the minus is U+2212; a unit stands after a space, upright; a date is
 * ISO 8601. Figures in a content are plain English ones. In a DCC and in data the sign is always the point.
 */

const decimalSigns: Readonly<Record<DocumentLanguage, "." | ",">> = { en: ".", de: "," };

/** One figure, as it stands in a content, in the style of the document's leading language. Other text stays as it is. */
export const figureIn = (leading: DocumentLanguage, text: string): string => {
  // A sign or a comparison before it, a thin space between its groups, a percent sign or a power of ten after it.
  const figure = /^([<>±]? ?[\u2212-]?\d+(?:\u202f\d{3})*)(?:\.(\d+))?( %| × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?$/.exec(text);
  if (!figure) return text;
  const [, whole = "", decimals, after = ""] = figure;
  const set = whole.replace("-", "\u2212");
  return decimals === undefined ? `${set}${after}` : `${set}${decimalSigns[leading]}${decimals}${after}`;
};
