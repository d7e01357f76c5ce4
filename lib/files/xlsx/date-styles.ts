import { childNamed, childrenNamed, type XmlElement } from "../dcc/xml-element";

/** Number formats that are dates or times without saying so, ECMA-376 part 1, 18.8.30, and those of East Asian editions. */
const isBuiltInDate = (id: number): boolean =>
  (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);

/** Letters of a date outside quotation marks, brackets and escapes. */
const looksLikeDate = (format: string): boolean =>
  /[dmyhs]/i.test(format.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]|general/gi, ""));

/** Indexes of cell formats that show a number as a date or time. */
export const dateStyles = (styles: XmlElement | null): ReadonlySet<number> => {
  const own = new Map(
    childrenNamed(childNamed(styles, "numFmts"), "numFmt").map((format) => [
      format.attributes.get("numFmtId") ?? "",
      format.attributes.get("formatCode") ?? "",
    ]),
  );
  return new Set(
    childrenNamed(childNamed(styles, "cellXfs"), "xf").flatMap((format, index) => {
      const id = format.attributes.get("numFmtId") ?? "0";
      const code = own.get(id);
      return (code === undefined ? isBuiltInDate(Number(id)) : looksLikeDate(code)) ? [index] : [];
    }),
  );
};
