import { type ChainEdge, type ChainNode, keyOf } from "@/lib/domain/trace/chain";
import { composeTrace } from "@/lib/domain/trace/compose-trace";
import type { Tx } from "../in-scope";
import { freezeNodes } from "../sql/freeze-nodes";
import { traceNodesByKey } from "../sql/trace-nodes-by-key";
import { loadTraceParts, tracePositions } from "./load-trace-parts";

const dateOf = (day: string | null): Date | null => (day === null ? null : new Date(`${day}T00:00:00Z`));

const edgeRow = (edge: ChainEdge, idOf: ReadonlyMap<string, string>, frozenAt: Date) => {
  const fromId = idOf.get(edge.from);
  const toId = idOf.get(edge.to);
  if (!fromId || !toId)
    throw new Error(`the chain names ${edge.to} beneath ${edge.from}, which is not frozen`);
  const { from: _from, to: _to, evidenceSha256, performedOn, validUntil, ...rest } = edge;
  return {
    ...rest,
    fromId,
    toId,
    performedOn: dateOf(performedOn),
    validUntil: dateOf(validUntil),
    evidenceSha256: evidenceSha256 === null ? null : Uint8Array.from(Buffer.from(evidenceSha256, "hex")),
    frozenAt,
  };
};

/** The parts of a certificate, once every certificate of ours that its standards stand on is frozen. */
const partsOf = async (tx: Tx, certificateId: string, position: number | null, frozenAt: Date) => {
  const { parts, inHouse } = await loadTraceParts(tx, certificateId, position);
  if (inHouse.length === 0) return parts;
  // A working standard's certificate is older than any that uses it: this comes to an end.
  for (const own of inHouse) await freezeChain(tx, own, frozenAt);
  return (await loadTraceParts(tx, certificateId, position)).parts;
};

/** Freezes the chain of every part of a certificate. Returns how many results were new. */
export const freezeChain = async (tx: Tx, certificateId: string, frozenAt: Date): Promise<number> => {
  let fresh = 0;
  for (const position of await tracePositions(tx, certificateId))
    fresh += await freezePart(tx, certificateId, position, frozenAt);
  return fresh;
};

/**
 * Freezes the chain of one part: what is not there yet is written with all that it stands on, what is there
 * stays as it was. In the transaction of sign-off; again, it does nothing. Returns how many results were new.
 */
const freezePart = async (
  tx: Tx,
  certificateId: string,
  position: number | null,
  frozenAt: Date,
): Promise<number> => {
  const { nodes, edges } = composeTrace(await partsOf(tx, certificateId, position, frozenAt));
  const fresh = await freezeNodes(tx, nodes as ChainNode[], frozenAt);
  if (fresh.length === 0) return 0;
  const freshKeys = new Set(fresh.map((row) => keyOf(row as Pick<ChainNode, "kind" | "recordId">)));
  const wanted = edges.filter(({ from }) => freshKeys.has(from));
  const ends = new Map(wanted.flatMap(({ from, to }) => [from, to]).map((key) => [key, splitKey(key)]));
  const known = await traceNodesByKey(tx, [...ends.values()]);
  const idOf = new Map(known.map((row) => [keyOf(row as Pick<ChainNode, "kind" | "recordId">), row.id]));
  if (wanted.length > 0)
    await tx.traceEdge.createMany({ data: wanted.map((edge) => edgeRow(edge, idOf, frozenAt)) });
  return fresh.filter(({ kind }) => kind === "result").length;
};

const splitKey = (key: string) => {
  const space = key.indexOf(" ");
  return { kind: key.slice(0, space), recordId: key.slice(space + 1) };
};
