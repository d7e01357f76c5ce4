import type { Tx } from "@/lib/data/in-scope";

export type AuditHeadRow = { readonly sequence: bigint; readonly hash: Uint8Array; readonly last: bigint };

/** The head and the last event in one statement, thus of one moment: appends go on meanwhile. */
export const auditHeadRow = async (tx: Tx): Promise<AuditHeadRow | undefined> => {
  const rows = await tx.$queryRaw<AuditHeadRow[]>`
    SELECT sequence, hash, (SELECT coalesce(max(sequence), 0) FROM audit_event) AS last FROM audit_head`;
  return rows[0];
};
