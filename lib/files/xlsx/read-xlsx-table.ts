import { sensorListLimits as most } from "@/lib/domain/intake/list-limits";
import { withXml } from "../dcc/with-xml";
import { childNamed, childrenNamed, type XmlElement } from "../dcc/xml-element";
import {
  isEmptyCell,
  noTable,
  type TableCell,
  type TableRow,
  type TextTableOutcome,
  textCell,
} from "../sensor-list/text-table";
import { columnOf } from "./cell-address";
import { dateStyles } from "./date-styles";
import { firstSheet } from "./first-sheet";
import { readCell, richText } from "./read-cell";
import { unpackXlsx } from "./unpack-xlsx";

const damaged = () =>
  noTable(null, null, "The spreadsheet cannot be read. Save it anew as .xlsx, or as CSV (UTF-8).");

type Workbook = { readonly strings: readonly string[]; readonly dates: ReadonlySet<number> };

const workbookOf = (parts: ReadonlyMap<string, Uint8Array>): Workbook | null => {
  const strings = parts.get("xl/sharedstrings.xml");
  const styles = parts.get("xl/styles.xml");
  const texts = strings
    ? withXml<readonly string[] | null>(
        strings,
        () => null,
        (root) => childrenNamed(root, "si").map(richText),
      )
    : [];
  const dates = styles
    ? withXml<ReadonlySet<number> | null>(styles, () => null, dateStyles)
    : new Set<number>();
  return texts && dates ? { strings: texts, dates } : null;
};

/** Cells at their columns; a cell without an address follows the one before it. */
const cellsOf = (row: XmlElement, workbook: Workbook): readonly TableCell[] | null => {
  const cells: TableCell[] = [];
  let next = 0;
  for (const cell of childrenNamed(row, "c")) {
    const reference = cell.attributes.get("r");
    const column = reference === undefined ? next : columnOf(reference);
    if (column === null || column < next) return null;
    next = column + 1;
    const read = readCell(cell, workbook);
    if (column >= most.columns) {
      if (isEmptyCell(read)) continue;
      return null;
    }
    while (cells.length < column) cells.push(textCell(""));
    cells.push(read);
  }
  return cells;
};

const rowsOf = (sheet: XmlElement, workbook: Workbook): readonly TableRow[] | TextTableOutcome => {
  const rows: TableRow[] = [];
  let number = 0;
  for (const row of childrenNamed(childNamed(sheet, "sheetData"), "row")) {
    const stated = Number(row.attributes.get("r") ?? number + 1);
    if (!Number.isInteger(stated) || stated <= number) return damaged();
    number = stated;
    const cells = cellsOf(row, workbook);
    if (!cells)
      return noTable(
        number,
        null,
        `The cells of this row cannot be placed; at most ${most.columns} columns are read.`,
      );
    if (cells.every(isEmptyCell)) continue;
    rows.push({ number, cells });
    if (rows.length > most.rows + 1)
      return noTable(number, null, `At most ${most.rows} sensors in one file. Make two files of it.`);
  }
  return rows;
};

const nameOf = (cell: TableCell): string => (cell.kind === "text" ? cell.text : "");

const tableOf = (sheet: XmlElement, workbook: Workbook): TextTableOutcome => {
  const read = rowsOf(sheet, workbook);
  if ("ok" in read) return read;
  const [head, ...rows] = read;
  if (!head) return noTable(null, null, "The first sheet is empty. Fill in the template and choose that.");
  const names = head.cells.map(nameOf);
  const beyond = rows.find(({ cells }) => cells.slice(names.length).some((cell) => !isEmptyCell(cell)));
  if (beyond)
    return noTable(beyond.number, null, "A cell of this row stands under no column name. Take it out.");
  return {
    ok: true,
    table: {
      format: "XLSX",
      header: { number: head.number, names },
      rows: rows.map(({ number, cells }) => ({ number, cells: cells.slice(0, names.length) })),
    },
  };
};

/** The first sheet of a workbook as the texts that were typed; nothing is calculated, fetched or run. */
export const readXlsxTable = (bytes: Uint8Array): TextTableOutcome => {
  const unpacked = unpackXlsx(bytes);
  if (!unpacked.ok) return noTable(null, null, unpacked.message);
  const sheet = firstSheet(unpacked.parts);
  const workbook = workbookOf(unpacked.parts);
  if (!sheet || !workbook) return damaged();
  return withXml<TextTableOutcome>(sheet, damaged, (root) => tableOf(root, workbook));
};
