import { zipFiles } from "@/lib/documents/zip-files";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Clock } from "../execute";
import { fetchDocuments } from "./download";
import { zipEntries } from "./zip-entries";

/** Several certificates as one ZIP; each is recorded as a download of its own. All of them or none. */
export const fetchTogether = async (
  actor: Actor,
  tokens: readonly string[],
  clock: Clock,
): Promise<Uint8Array> => {
  const documents = await fetchDocuments(actor, tokens, clock, "both");
  return zipFiles(documents.flatMap(zipEntries));
};
