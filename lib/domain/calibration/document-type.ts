/** As large as a scanned certificate of some pages; a form may bring more (next.config.mjs). */
export const documentLimitBytes = 4 * 1024 * 1024;

export type DocumentType = "application/pdf" | "application/xml" | "image/png" | "image/jpeg";

const begins = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, index) => bytes[index] === byte);

const byteOrderMark = [0xef, 0xbb, 0xbf];
const lessThan = 0x3c;
const blanks = new Set([0x20, 0x09, 0x0a, 0x0d]);

/** Told by the content, never by the name: whoever opens it later trusts this word. Null: none of those we keep. */
export const documentType = (bytes: Uint8Array): DocumentType | null => {
  if (begins(bytes, [0x25, 0x50, 0x44, 0x46, 0x2d])) return "application/pdf";
  if (begins(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return "image/png";
  if (begins(bytes, [0xff, 0xd8, 0xff])) return "image/jpeg";
  const text = begins(bytes, byteOrderMark) ? bytes.subarray(byteOrderMark.length) : bytes;
  const first = text.findIndex((byte) => !blanks.has(byte));
  const next = text[first + 1] ?? 0;
  const isName = (next >= 0x41 && next <= 0x5a) || (next >= 0x61 && next <= 0x7a);
  // "<?", "<!" or "<name": what follows is for the reader of XML to judge.
  return first >= 0 && text[first] === lessThan && (isName || next === 0x3f || next === 0x21)
    ? "application/xml"
    : null;
};
