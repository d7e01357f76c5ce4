import { sensorListLimits as most } from "@/lib/domain/intake/list-limits";
import { readXlsxTable } from "../xlsx/read-xlsx-table";
import { readCsvTable } from "./read-csv-table";
import { noTable, type TextTableOutcome } from "./text-table";

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

const tooWide = (length: number): boolean => length > most.columns;

/** A list of sensors as it came, by its content and not by its name: CSV or XLSX, or why it is neither. */
export const readTextTable = (bytes: Uint8Array): TextTableOutcome => {
  if (bytes.length === 0) return noTable(null, null, "The file is empty. Choose the list of sensors.");
  if (bytes.length > most.bytes)
    return noTable(
      null,
      null,
      `The file has ${bytes.length} bytes; a list of ${most.rows} sensors has less than ${most.bytes}. Leave out what is no list.`,
    );
  const read = isZip(bytes) ? readXlsxTable(bytes) : readCsvTable(bytes);
  if (!read.ok) return read;
  const { header, rows } = read.table;
  if (tooWide(header.names.length))
    return noTable(header.number, null, `At most ${most.columns} columns are read. Leave out the others.`);
  if (rows.length === 0)
    return noTable(null, null, "The file has a header and no sensors. Write one sensor in each row.");
  for (const { number, cells } of rows)
    for (const [at, cell] of cells.entries())
      if (cell.kind === "text" && cell.text.length > most.cellCharacters)
        return noTable(
          number,
          header.names[at] ?? null,
          `This cell has more than ${most.cellCharacters} characters.`,
        );
  return read;
};
