import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { decideEntry } from "@/lib/domain/nonconformity/decide-entry";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { demandSaved } from "../versioned";
import { insertEntry, type NewEntry } from "./insert-nonconformity";
import type { LoadedStory } from "./load-story";

/** An entry with the step it means: decided, stored, and the row moved on, so that nobody writes over somebody. */
export const enter = async (
  tx: Tx,
  { row, story }: LoadedStory,
  entry: NewEntry & { readonly saidById: string },
): Promise<AuditEvent> => {
  const state = demand(decideEntry(story, entry.kind, entry.saidById));
  const event = await insertEntry(tx, { id: row.id, number: row.number, state }, entry);
  demandSaved(
    await tx.nonconformity.updateMany({
      where: { id: row.id, version: row.version },
      data: { state, version: { increment: 1 } },
    }),
  );
  return event;
};
