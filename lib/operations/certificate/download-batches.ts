import type { Actor } from "@/lib/domain/staff/actor";
import type { Clock } from "../execute";
import { type CertificateDocument, fetchDocuments } from "./download";

/** Some two megabytes at a time. */
const batchSize = 25;

/** Any number of certificates, some at a time, each recorded as a download of its own when it is fetched. */
export async function* downloadBatches(
  actor: Actor,
  tokens: readonly string[],
  clock: Clock,
): AsyncGenerator<readonly CertificateDocument[]> {
  for (let from = 0; from < tokens.length; from += batchSize)
    yield await fetchDocuments(actor, tokens.slice(from, from + batchSize), clock, "both");
}
