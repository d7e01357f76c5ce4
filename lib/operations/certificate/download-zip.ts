import { zipLength, zipStream } from "@/lib/documents/zip-stream";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Clock } from "../execute";
import { downloadBatches } from "./download-batches";

type Sized = { readonly number: string; readonly token: string; readonly size: number | null };

async function* entries(actor: Actor, tokens: readonly string[], clock: Clock) {
  for await (const batch of downloadBatches(actor, tokens, clock))
    yield batch.map(({ number, bytes }) => ({ name: `${number}.pdf`, bytes }));
}

/** Any number of certificates as one ZIP that is made while it is sent, and how long it will be. */
export const downloadZip = (
  actor: Actor,
  set: readonly Sized[],
  clock: Clock,
): { readonly chunks: AsyncGenerator<Uint8Array>; readonly length: number } => ({
  chunks: zipStream(
    entries(
      actor,
      set.map(({ token }) => token),
      clock,
    ),
  ),
  length: zipLength(set.map(({ number, size }) => ({ name: `${number}.pdf`, size: size ?? 0 }))),
});
