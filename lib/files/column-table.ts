import { csvDelimiter, csvFields, csvLines, isTooLong } from "./csv-lines";
import { csvText } from "./csv-text";
import { decimal } from "./decimal";
import type { ReadingsProblem } from "./readings-problem";

/** A column a table may have: by any of its names, a number or a text, needed or not. */
export type TableColumn = {
  readonly names: readonly string[];
  readonly kind: "number" | "text";
  readonly isOptional?: boolean;
};

export type ColumnTable = {
  /** The name each column was found under, in the order asked for; null: not there. */
  readonly found: readonly (string | null)[];
  /** One list a line, cells in the order asked for; null where an optional cell is empty. */
  readonly rows: readonly (readonly (number | string | null)[])[];
};

export type TableOutcome =
  | { readonly ok: true; readonly table: ColumnTable }
  | { readonly ok: false; readonly problem: ReadingsProblem };

const no = (line: number | null, column: string | null, message: string): TableOutcome => ({
  ok: false,
  problem: { line, column, message },
});

const most = { bytes: 4_000_000, rows: 5000 } as const;

const namesOf = (columns: readonly TableColumn[]): string =>
  columns
    .map(({ names, isOptional }) => names.join(" or ") + (isOptional ? " (if there is one)" : ""))
    .join("; ");

type Placed = { readonly index: number; readonly name: string } | null;

/** Where each column stands; every column of the file must be one that is known. */
const placeColumns = (
  header: readonly string[],
  line: number,
  columns: readonly TableColumn[],
): readonly Placed[] | TableOutcome => {
  const plain = header.map((name) => name.trim().replace(/[µμ]/g, "u").toLowerCase());
  const known = columns.flatMap(({ names }) => names.map((name) => name.toLowerCase()));
  const stray = plain.findIndex((name) => !known.includes(name));
  if (stray >= 0)
    return no(
      line,
      header[stray] ?? "",
      `This column is not known. Remove it. Expected are ${namesOf(columns)}.`,
    );
  const placed: Placed[] = [];
  for (const column of columns) {
    const lower = column.names.map((name) => name.toLowerCase());
    const at = plain.flatMap((name, index) => (lower.includes(name) ? [index] : []));
    if (at.length > 1)
      return no(line, header[at[1] as number] ?? "", "This column is there twice. Keep one of them.");
    const [index] = at;
    if (index === undefined && !column.isOptional)
      return no(line, column.names.join(" or "), `This column is missing. Expected are ${namesOf(columns)}.`);
    placed.push(index === undefined ? null : { index, name: plain[index] as string });
  }
  return placed;
};

const readCell = (
  written: string,
  { kind, isOptional }: TableColumn,
): number | string | null | { readonly say: string } => {
  const trimmed = written.trim();
  if (trimmed === "") return isOptional ? null : { say: "This cell is empty." };
  if (kind === "text") return trimmed;
  const read = decimal(trimmed, 0);
  if (read.kind !== "number") return { say: `“${trimmed.slice(0, 40)}” is not a number.` };
  return read.value;
};

/** A small table with named columns: bytes in, cells out, or a refusal with line, column and remedy. Nothing is guessed silently. */
export const readColumnTable = (bytes: Uint8Array, columns: readonly TableColumn[]): TableOutcome => {
  if (bytes.length > most.bytes)
    return no(null, null, "The file is larger than 4 MB. A survey is a small table.");
  const decoded = csvText(bytes);
  if (!decoded.ok) return no(1, null, decoded.message);
  const lines = csvLines(decoded.text);
  const first = lines.next();
  if (first.done) return no(1, null, "The file is empty. Upload a table with its header line.");
  if (isTooLong(first.value))
    return no(first.value.number, null, "The line is over 100 000 characters long.");
  const delimiter = csvDelimiter(first.value.text);
  const header = csvFields(first.value.text, delimiter);
  if (!header) return no(first.value.number, null, "A quotation mark is left open. Close it or remove it.");
  const placed = placeColumns(header, first.value.number, columns);
  if ("ok" in placed) return placed;
  const rows: (number | string | null)[][] = [];
  for (const { number, text } of lines) {
    const cells = csvFields(text, delimiter);
    if (cells?.length !== header.length)
      return no(
        number,
        null,
        `The line has ${cells?.length ?? "no"} cells; the header has ${header.length}.`,
      );
    const row: (number | string | null)[] = [];
    for (const [i, column] of columns.entries()) {
      const at = placed[i];
      const read = at ? readCell(cells[at.index] as string, column) : null;
      if (typeof read === "object" && read !== null) return no(number, at?.name ?? null, read.say);
      row.push(read);
    }
    rows.push(row);
    if (rows.length > most.rows) return no(number, null, `At most ${most.rows} lines.`);
  }
  return { ok: true, table: { found: placed.map((one) => one?.name ?? null), rows } };
};
