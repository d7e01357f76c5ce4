import type { Tx } from "@/lib/data/in-scope";
import type { StoredEvent } from "@/lib/domain/audit/chain";

export type AuditFilter = {
  readonly entityKind?: string;
  readonly entityId?: string;
  readonly actorId?: string;
  readonly action?: string;
};

export type AuditPage = {
  /** Newest first. */
  readonly events: readonly StoredEvent[];
  /** `before` of the next page; null = this was the last. */
  readonly next: bigint | null;
};

/** One page of the log, newest first. Pages are cut by sequence, so that they stand still while events are appended. */
export const readAuditEvents = async (
  tx: Tx,
  filter: AuditFilter,
  page: { readonly before?: bigint | null; readonly limit: number },
): Promise<AuditPage> => {
  const { entityKind, entityId, actorId, action } = filter;
  const found = await tx.auditEvent.findMany({
    where: {
      entityKind,
      entityId,
      actorId,
      action,
      ...(page.before == null ? {} : { sequence: { lt: page.before } }),
    },
    orderBy: { sequence: "desc" },
    take: page.limit + 1,
  });
  const events = found.slice(0, page.limit);
  return { events, next: found.length > page.limit ? events.at(-1)!.sequence : null };
};
