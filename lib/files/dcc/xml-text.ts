import type { DccProblem } from "./dcc-certificate";

export const dccLimitBytes = 10 * 1024 * 1024;

type Decoded =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: DccProblem };

const no = (code: DccProblem["code"], line: number, message: string): Decoded => ({
  ok: false,
  problem: { code, path: "", line, message },
});

/** Encodings a certificate may declare; all others would need guessing. */
const readable = new Set([
  "utf-8",
  "utf8",
  "utf-16",
  "us-ascii",
  "iso-8859-1",
  "iso-8859-15",
  "windows-1252",
]);

const encodingOf = (bytes: Uint8Array): string => {
  const [first, second] = bytes;
  if (first === 0xfe && second === 0xff) return "utf-16be";
  if (first === 0xff && second === 0xfe) return "utf-16le";
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  return (
    /^(?:\u00EF\u00BB\u00BF)?<\?xml[^>]*\bencoding\s*=\s*["']([^"']*)["']/.exec(head)?.[1]?.toLowerCase() ??
    "utf-8"
  );
};

const decode = (bytes: Uint8Array): Decoded => {
  const encoding = encodingOf(bytes);
  if (!readable.has(encoding) && !/^utf-16[bl]e$/.test(encoding))
    return no(
      "not-xml",
      1,
      `The encoding "${encoding.slice(0, 40)}" is not read here. Save the file as UTF-8 and say so in its first line.`,
    );
  try {
    // UTF-16 without its mark at the beginning cannot be told from damage.
    const text = new TextDecoder(encoding === "utf-16" ? "utf-8" : encoding, { fatal: true }).decode(bytes);
    return { ok: true, text };
  } catch {
    return no(
      "not-xml",
      1,
      `The bytes are not ${encoding.toUpperCase()}. Fetch the file from its issuer again; it was damaged or saved in another encoding.`,
    );
  }
};

/** A document type can only stand before the first element; the index of its `<!`, or -1. */
const doctypeAt = (text: string): number => {
  let at = 0;
  for (;;) {
    while (/[ \t\r\n\uFEFF]/.test(text.charAt(at))) at += 1;
    const end = text.startsWith("<?", at) ? "?>" : text.startsWith("<!--", at) ? "-->" : null;
    if (end === null) return text.startsWith("<!", at) ? at : -1;
    const closed = text.indexOf(end, at + 2);
    if (closed < 0) return -1;
    at = closed + end.length;
  }
};

/**
 * Bytes to text, or the refusal: what is too large or brings a document type (entities, files and addresses to fetch)
 * is refused before a parser sees it.
 */
export const xmlText = (bytes: Uint8Array): Decoded => {
  if (bytes.length > dccLimitBytes)
    return no(
      "too-large",
      0,
      "The file is larger than 10 MB. Ask the issuer for the certificate without embedded documents, and keep those as evidence files of their own.",
    );
  if (bytes.length === 0) return no("not-xml", 0, "The file is empty. Fetch it from its issuer again.");
  const decoded = decode(bytes);
  if (!decoded.ok) return decoded;
  const doctype = doctypeAt(decoded.text);
  if (doctype >= 0)
    return no(
      "forbidden",
      decoded.text.slice(0, doctype).split("\n").length,
      "The file has a document type (<!DOCTYPE …>), by which entities or other files could be drawn in. No digital calibration certificate needs one: ask the issuer for the file without it.",
    );
  return decoded;
};
