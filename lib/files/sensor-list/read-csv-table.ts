import { sensorListLimits as most } from "@/lib/domain/intake/list-limits";
import { csvDelimiter, csvFields } from "../csv-lines";
import { csvText } from "../csv-text";
import { noTable, type TableRow, type TextTableOutcome, textCell } from "./text-table";

/** Lines as an editor counts them; nothing is taken for a comment, since a serial may begin with any sign. */
const linesOf = (text: string): readonly { readonly number: number; readonly text: string }[] =>
  text
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ number: index + 1, text: line }))
    .filter((line) => line.text.replace(/[\s;,]/g, "") !== "");

/** A CSV of any usual delimiter; the header decides which. */
export const readCsvTable = (bytes: Uint8Array): TextTableOutcome => {
  const decoded = csvText(bytes, "list");
  if (!decoded.ok) return noTable(null, null, decoded.message);
  const [head, ...lines] = linesOf(decoded.text);
  if (!head) return noTable(null, null, "The file is empty. Fill in the template and choose that.");
  const delimiter = csvDelimiter(head.text);
  const names = csvFields(head.text, delimiter);
  if (!names) return noTable(head.number, null, "A quotation mark is left open. Close it or remove it.");
  const rows: TableRow[] = [];
  for (const { number, text } of lines) {
    const cells = csvFields(text, delimiter);
    if (!cells) return noTable(number, null, "A quotation mark is left open. Close it or remove it.");
    if (cells.length > names.length && cells.slice(names.length).some((cell) => cell.trim() !== ""))
      return noTable(
        number,
        null,
        `This line has ${cells.length} cells, the header ${names.length}. Take out the extra ${
          delimiter === "," ? "commas" : "separators"
        }; numbers have a decimal point.`,
      );
    rows.push({ number, cells: cells.slice(0, names.length).map(textCell) });
    if (rows.length > most.rows)
      return noTable(number, null, `At most ${most.rows} sensors in one file. Make two files of it.`);
  }
  return { ok: true, table: { format: "CSV", header: { number: head.number, names }, rows } };
};
