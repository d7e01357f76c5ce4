import type { Tx } from "@/lib/data/in-scope";
import { auditAppend } from "@/lib/data/sql/audit-append";
import { canonical } from "@/lib/domain/audit/canonical";
import type { AuditEvent } from "@/lib/domain/audit/define-event";

/**
 * Appends what happened, in its order, within the transaction in which it happened. To be called last: from the first
 * event on the head of the chain is locked, and everybody else waits for this commit.
 */
export const appendAuditEvents = async (
  tx: Tx,
  actorId: string,
  events: readonly AuditEvent[],
): Promise<void> => {
  for (const event of events)
    await auditAppend(tx, actorId, event.action, event.entityKind, event.entityId, canonical(event.payload));
};
