/** Bytes of a text table → its text, or why it is none. Nothing is guessed silently: what cannot be told apart is refused. */
export type CsvText =
  | { readonly ok: true; readonly text: string; readonly encoding: "UTF-8" | "UTF-16" | "Windows-1252" }
  | { readonly ok: false; readonly message: string };

const startsWith = (bytes: Uint8Array, ...head: readonly number[]): boolean =>
  bytes.length >= head.length && head.every((value, index) => bytes[index] === value);

/** Files people send by mistake, told by their first bytes. */
const knownFormat = (bytes: Uint8Array): string | null => {
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04)) return "a spreadsheet or ZIP file";
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return "an old spreadsheet file";
  if (startsWith(bytes, 0x25, 0x50, 0x44, 0x46)) return "a PDF";
  if (startsWith(bytes, 0x1f, 0x8b)) return "a compressed file";
  return null;
};

/** Control characters other than tab, line feed and carriage return do not occur in a table of numbers. */
const hasControl = (bytes: Uint8Array): boolean => {
  for (const byte of bytes)
    if (byte < 0x20 ? byte !== 0x09 && byte !== 0x0a && byte !== 0x0d : byte === 0x7f) return true;
  return false;
};

const decode = (bytes: Uint8Array, encoding: string): string | null => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};

/** "t\0i\0" or "\0t\0i": UTF-16 that lost its mark. */
const looksLikeUtf16 = (bytes: Uint8Array): boolean => {
  if (bytes.length < 4 || bytes.length % 2 !== 0) return false;
  const head = bytes.subarray(0, Math.min(bytes.length, 64));
  const zeros = (parity: number) => head.filter((byte, index) => index % 2 === parity && byte === 0).length;
  return zeros(0) === head.length / 2 || zeros(1) === head.length / 2;
};

/** What the table holds, for the remedy. */
type Holds = "readings" | "list";

const binary = (what: string, holds: Holds): CsvText => ({
  ok: false,
  message: `This is ${what}, not a table of text. Save the ${holds} as CSV (UTF-8) and upload that file.`,
});

const decodeUtf16 = (bytes: Uint8Array, encoding: "utf-16le" | "utf-16be", holds: Holds): CsvText => {
  const text = decode(bytes, encoding);
  return text === null || text.includes("\0")
    ? binary("a damaged UTF-16 file", holds)
    : { ok: true, text, encoding: "UTF-16" };
};

export const csvText = (bytes: Uint8Array, holds: Holds = "readings"): CsvText => {
  const known = knownFormat(bytes);
  if (known) return binary(known, holds);
  if (startsWith(bytes, 0xff, 0xfe)) return decodeUtf16(bytes, "utf-16le", holds);
  if (startsWith(bytes, 0xfe, 0xff)) return decodeUtf16(bytes, "utf-16be", holds);
  if (looksLikeUtf16(bytes)) return binary("UTF-16 text without its byte-order mark", holds);
  if (hasControl(bytes)) return binary("a binary file", holds);
  // TextDecoder drops a UTF-8 byte-order mark by itself.
  const utf8 = decode(bytes, "utf-8");
  if (utf8 !== null) return { ok: true, text: utf8, encoding: "UTF-8" };
  // Instruments under Windows write the µ of µV as one byte; every other text then fails as a number or a name.
  const ansi = decode(bytes, "windows-1252");
  return ansi === null ? binary("a binary file", holds) : { ok: true, text: ansi, encoding: "Windows-1252" };
};
