/** What begins like this is taken for a formula by programs that open tables. */
const formula = /^[=+\-@\t\r]/;
/** A figure is a figure, also with its sign. */
const figure = /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/** One cell: a formula that somebody typed as a name stays a text, marked by an apostrophe. */
export const csvCell = (value: string): string => {
  const plain = value.replaceAll("\u2212", "-");
  const kept = figure.test(plain) ? plain : formula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(kept) ? `"${kept.replaceAll('"', '""')}"` : kept;
};

/** A line of RFC 4180. */
export const csvLine = (cells: readonly string[]): string => `${cells.map(csvCell).join(",")}\r\n`;
