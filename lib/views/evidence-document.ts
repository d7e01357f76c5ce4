import { loadDocument } from "@/lib/data/evidence/load-document";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

/** A file kept as evidence, to the laboratory's own people. */
export const evidenceDocumentView = (actor: Actor, id: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const { bytes, mediaType, fileName } = found(await loadDocument(tx, id));
    return { bytes, mediaType, fileName };
  });
