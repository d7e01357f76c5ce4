export type Cell = string | { readonly number: string };

/**
 * What a spreadsheet would run as a formula begins with one of these. A leading apostrophe makes it text there; a cell
 * of ours that is a number is one, and stays.
 */
const beginsFormula = /^[=+\-@\t\r]/;

const textOf = (cell: Cell): string => {
  const text = typeof cell === "string" ? (beginsFormula.test(cell) ? `'${cell}` : cell) : cell.number;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** RFC 4180: commas, CRLF, quotes doubled. */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(textOf).join(",")}\r\n`).join("");

/** With the mark of UTF-8 before it: without, spreadsheet programs read the letters of names wrong. */
export const csvBytes = (rows: readonly (readonly Cell[])[]): Uint8Array =>
  new TextEncoder().encode(`\ufeff${csvText(rows)}`);
