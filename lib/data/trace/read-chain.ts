import { isoDay } from "@/lib/domain/calibration/due";
import {
  type Chain,
  type ChainEdge,
  type ChainKind,
  type ChainNode,
  keyOf,
  NodeFacts,
} from "@/lib/domain/trace/chain";
import type { Tx } from "../in-scope";
import { chainBeneath, type TraceNodeRow } from "../sql/chain-beneath";
import { chainEdges, type TraceEdgeRow } from "../sql/chain-edges";

const nodeOf = (row: TraceNodeRow): ChainNode => ({
  kind: row.kind as ChainKind,
  recordId: row.recordId,
  title: row.title,
  detail: row.detail,
  facts: NodeFacts.parse(JSON.parse(row.facts)),
  height: row.height,
});

const edgeOf = (row: TraceEdgeRow, keys: ReadonlyMap<string, string>): ChainEdge => {
  const { fromId, toId, performedOn, validUntil, ...rest } = row;
  return {
    from: keys.get(fromId) ?? "",
    to: keys.get(toId) ?? "",
    ...rest,
    performedOn: performedOn ? isoDay(performedOn) : null,
    validUntil: validUntil ? isoDay(validUntil) : null,
  };
};

export type FrozenChain = Chain & { readonly frozenAt: Date | null };

/** The frozen chain of these records: two statements, however long it is and however much is stored beside it. */
export const readChain = async (
  tx: Tx,
  kind: ChainKind,
  recordIds: readonly string[],
): Promise<FrozenChain> => {
  const rows = await chainBeneath(tx, kind, recordIds);
  const keys = new Map(rows.map((row) => [row.id, keyOf(nodeOf(row))]));
  const edges = await chainEdges(
    tx,
    rows.map(({ id }) => id),
  );
  const tops = rows.filter((row) => row.kind === kind && recordIds.includes(row.recordId));
  return {
    nodes: rows.map(nodeOf).sort((a, b) => b.height - a.height || keyOf(a).localeCompare(keyOf(b))),
    edges: edges.map((row) => edgeOf(row, keys)),
    frozenAt: tops.map(({ frozenAt }) => frozenAt).sort((a, b) => a.getTime() - b.getTime())[0] ?? null,
  };
};
