import type { ChainNode } from "@/lib/domain/trace/chain";
import type { Tx } from "../in-scope";

/**
 * Writes those that are not frozen yet, and returns their ids: what an earlier certificate froze stays as it was. In
 * the order of their keys, so that two sign-offs that share standards cannot deadlock.
 */
export const freezeNodes = (
  tx: Tx,
  nodes: readonly ChainNode[],
  frozenAt: Date,
): Promise<{ id: string; kind: string; recordId: string }[]> =>
  tx.$queryRaw`
    INSERT INTO trace_node (kind, record_id, title, detail, facts, height, frozen_at)
    SELECT given.*, ${frozenAt}::timestamptz FROM unnest(
      ${nodes.map(({ kind }) => kind)}::text[], ${nodes.map(({ recordId }) => recordId)}::text[],
      ${nodes.map(({ title }) => title)}::text[], ${nodes.map(({ detail }) => detail)}::text[],
      ${nodes.map(({ facts }) => JSON.stringify(facts))}::text[], ${nodes.map(({ height }) => height)}::int[]
    ) AS given (kind, record_id, title, detail, facts, height)
    ORDER BY kind, record_id
    ON CONFLICT (kind, record_id) DO NOTHING
    RETURNING id::text AS id, kind, record_id AS "recordId"`;
