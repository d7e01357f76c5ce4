import { Zip, ZipPassThrough } from "fflate";

export type ZipEntry = { readonly name: string; readonly bytes: Uint8Array };

const localHeader = 30;
const descriptor = 16;
const centralHeader = 46;
const endOfDirectory = 22;

/**
 * How many bytes a ZIP of stored files will be, so that a browser shows how far it is: headers, names twice, the bytes
 * as they are (APPNOTE.TXT of the ZIP format, 4.3).
 */
export const zipLength = (files: readonly { readonly name: string; readonly size: number }[]): number =>
  files.reduce(
    (sum, { name, size }) => sum + localHeader + descriptor + centralHeader + 2 * name.length + size,
    endOfDirectory,
  );

/** A ZIP as it is made, one batch of files at a time in memory. Stored and not compressed: PDFs are compressed already. */
export async function* zipStream(batches: AsyncIterable<readonly ZipEntry[]>): AsyncGenerator<Uint8Array> {
  let ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for await (const batch of batches) {
    for (const { name, bytes } of batch) {
      const file = new ZipPassThrough(name);
      // The same files are the same bytes.
      file.mtime = new Date(2000, 0, 1);
      zip.add(file);
      file.push(bytes, true);
    }
    yield* ready;
    ready = [];
  }
  zip.end();
  yield* ready;
}
