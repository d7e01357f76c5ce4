import { zipStream } from "@/lib/documents/zip-stream";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Clock } from "../execute";
import { downloadBatches } from "./download-batches";
import { zipEntries } from "./zip-entries";

async function* entries(actor: Actor, tokens: readonly string[], clock: Clock) {
  for await (const batch of downloadBatches(actor, tokens, clock)) yield batch.flatMap(zipEntries);
}

/** Any number of certificates as one ZIP that is made while it is sent. */
export const downloadZip = (
  actor: Actor,
  tokens: readonly string[],
  clock: Clock,
): AsyncGenerator<Uint8Array> => zipStream(entries(actor, tokens, clock));
