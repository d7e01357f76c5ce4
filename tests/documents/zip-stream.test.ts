import { unzipSync } from "fflate";
import { expect, it } from "vitest";
import { zipStream } from "@/lib/documents/zip-stream";

const file = (index: number, size: number) => ({
  name: `C-${index}.pdf`,
  bytes: new Uint8Array(size).fill(index % 256),
});

async function* inBatches(count: number, size: number, onBatch: (made: number) => void) {
  for (let from = 0; from < count; from += 25) {
    onBatch(from);
    yield Array.from({ length: Math.min(25, count - from) }, (_, index) => file(from + index, size));
  }
}

it("holds each file whole", async () => {
  const chunks: Uint8Array[] = [];
  for await (const chunk of zipStream(inBatches(60, 1000, () => {}))) chunks.push(chunk);
  const whole = Buffer.concat(chunks);
  const files = unzipSync(whole);
  expect(Object.keys(files)).toHaveLength(60);
  expect(files["C-59.pdf"]).toEqual(file(59, 1000).bytes);
});

it("makes a batch only when what came before is taken", async () => {
  let made = 0;
  const stream = zipStream(
    inBatches(500, 100_000, (from) => {
      made = from;
    }),
  );
  await stream.next();
  // Fifty megabytes in all; two and a half of them were made for the first piece.
  expect(made).toBe(0);
  await stream.return(undefined);
});

it("is an empty ZIP of nothing", async () => {
  const chunks: Uint8Array[] = [];
  for await (const chunk of zipStream(inBatches(0, 0, () => {}))) chunks.push(chunk);
  expect(unzipSync(Buffer.concat(chunks))).toEqual({});
});
