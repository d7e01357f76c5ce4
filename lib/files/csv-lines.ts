/** One line of a text table with its number in the file. */
export type CsvLine = { readonly number: number; readonly text: string };

/** A line this long is no table: a binary file, or one whose line ends were lost. */
const longestLine = 100_000;

/** Lines ended by LF, CRLF or CR; blank lines and lines that begin with # are passed over, and still counted. */
export function* csvLines(text: string): Generator<CsvLine, void> {
  const separator = text.includes("\n") ? "\n" : "\r";
  let start = 0;
  let number = 0;
  while (start < text.length) {
    number += 1;
    const at = text.indexOf(separator, start);
    const end = at < 0 ? text.length : at;
    const line = text.slice(start, text.charCodeAt(end - 1) === 13 && end > start ? end - 1 : end);
    start = end + 1;
    if (line.trim() !== "" && !line.startsWith("#"))
      yield { number, text: line.length > longestLine ? line.slice(0, longestLine) : line };
  }
}

export const isTooLong = (line: CsvLine): boolean => line.text.length >= longestLine;

/** Fields of one line; a field may stand in double quotes, with "" for one quote. `null`: a quote is left open. */
export const csvFields = (line: string, delimiter: string): readonly string[] | null => {
  if (!line.includes('"')) return line.split(delimiter);
  const fields: string[] = [];
  let field = "";
  let quoted = false;
  for (let index = 0; index < line.length; index += 1) {
    const char = line.charAt(index);
    if (quoted && char === '"' && line.charAt(index + 1) === '"') {
      field += char;
      index += 1;
    } else if (char === '"') quoted = !quoted;
    else if (char === delimiter && !quoted) {
      fields.push(field);
      field = "";
    } else field += char;
  }
  return quoted ? null : [...fields, field];
};

/** The delimiter that cuts the header into most columns; a comma where none does. */
export const csvDelimiter = (header: string): string =>
  [";", "\t", ","].reduce((best, next) =>
    (csvFields(header, next)?.length ?? 0) > (csvFields(header, best)?.length ?? 0) ? next : best,
  );
