import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";

/** A file kept as evidence, bytes and all; null where it is not here. */
export const loadDocument = (tx: Tx, id: string) =>
  isUuid(id) ? tx.evidenceDocument.findUnique({ where: { id } }) : null;
