import { strToU8, zipSync } from "fflate";

/** One ZIP of documents, stored and not compressed: PDFs are compressed already. Dates are fixed: same files, same bytes. */
export const zipFiles = (
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[],
  note?: { readonly name: string; readonly text: string },
): Uint8Array =>
  zipSync(
    Object.fromEntries([
      ...files.map(({ name, bytes }) => [name, bytes] as const),
      ...(note ? [[note.name, strToU8(note.text)] as const] : []),
    ]),
    { level: 0, mtime: new Date(2000, 0, 1) },
  );
