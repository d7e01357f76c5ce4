import { childNamed, childrenNamed, type XmlElement } from "../dcc/xml-element";
import { type TableCell, textCell } from "../sensor-list/text-table";

const refused = (message: string): TableCell => ({ kind: "refused", message });

/** Text of a string with its runs; how it is pronounced (rPh) is not part of it. */
export const richText = (element: XmlElement | null): string => {
  const plain = childNamed(element, "t")?.text ?? "";
  return (
    plain +
    childrenNamed(element, "r")
      .map((run) => childNamed(run, "t")?.text ?? "")
      .join("")
  );
};

/** A spreadsheet keeps seventeen digits of which fifteen were typed: 12.300000000000001 was 12.3. */
const typedNumber = (stored: string): TableCell => {
  const value = Number(stored);
  if (stored.trim() === "" || !Number.isFinite(value))
    return refused("This number cannot be read. Type it anew.");
  const text = String(Number(value.toPrecision(15)));
  return text.includes("e") || Math.abs(value) >= 1e15
    ? refused("The spreadsheet has rounded this long number. Format the column as text and type it again.")
    : textCell(text);
};

type Workbook = { readonly strings: readonly string[]; readonly dates: ReadonlySet<number> };

/** A cell as it was typed, or why that cannot be known. A text that begins with = stays the text it is. */
export const readCell = (cell: XmlElement, { strings, dates }: Workbook): TableCell => {
  if (childNamed(cell, "f"))
    return refused("This cell holds a formula. Copy the column and paste it back as values.");
  const value = childNamed(cell, "v")?.text ?? "";
  const type = cell.attributes.get("t") ?? "n";
  if (type === "inlineStr") return textCell(richText(childNamed(cell, "is")));
  if (value === "") return textCell("");
  if (type === "s") {
    const text = /^\d{1,7}$/.test(value) ? strings[Number(value)] : undefined;
    return text === undefined ? refused("This text is missing from the file. Type it anew.") : textCell(text);
  }
  if (type === "b") return textCell(value === "1" ? "TRUE" : "FALSE");
  if (type === "e") return refused("This cell shows an error. Write what belongs there.");
  if (type === "d" || (type === "n" && dates.has(Number(cell.attributes.get("s") ?? "0"))))
    return refused("The spreadsheet made a date of this. Format the column as text and type it again.");
  return type === "n" ? typedNumber(value) : textCell(value);
};
