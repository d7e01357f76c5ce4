import type { Tx } from "../in-scope";

/** Frozen nodes by kind and record. */
export const traceNodesByKey = (
  tx: Tx,
  keys: readonly { readonly kind: string; readonly recordId: string }[],
): Promise<{ id: string; kind: string; recordId: string }[]> =>
  tx.$queryRaw`
    SELECT n.id::text AS id, n.kind, n.record_id AS "recordId"
      FROM unnest(${keys.map(({ kind }) => kind)}::text[], ${keys.map(({ recordId }) => recordId)}::text[])
           AS wanted (kind, record_id)
      JOIN trace_node n ON n.kind = wanted.kind AND n.record_id = wanted.record_id`;
