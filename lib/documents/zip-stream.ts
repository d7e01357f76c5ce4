import { Zip, ZipPassThrough } from "fflate";

export type ZipEntry = { readonly name: string; readonly bytes: Uint8Array };

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
