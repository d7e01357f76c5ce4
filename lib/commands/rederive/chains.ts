import { inScope, type Tx } from "@/lib/data/in-scope";
import { loadTraceParts, tracePositions } from "@/lib/data/trace/load-trace-parts";
import { readChain } from "@/lib/data/trace/read-chain";
import { canonical } from "@/lib/domain/audit/canonical";
import { type Chain, type ChainEdge, type ChainNode, keyOf } from "@/lib/domain/trace/chain";
import { composeTrace } from "@/lib/domain/trace/compose-trace";
import { Broken, counted, laboratory } from "./step";

/** What a frozen node has to say again. Of equipment, maker and serial may have been corrected since: its key counts. */
const said = ({ kind, facts, detail, ...rest }: ChainNode): string =>
  canonical(kind === "standard" ? { kind, ...rest } : { kind, facts, detail, ...rest });

const steps = (edges: readonly ChainEdge[]): ReadonlyMap<string, string> => {
  const from = new Map<string, string[]>();
  for (const edge of edges) from.set(edge.from, [...(from.get(edge.from) ?? []), canonical(edge)]);
  return new Map([...from].map(([key, all]) => [key, all.sort().join("\n")]));
};

/** What the records give is what was frozen; what lies behind a working standard is its own certificate's to compare. */
const demandSame = (record: string, composed: Chain, frozen: Chain): void => {
  const frozenNodes = new Map(frozen.nodes.map((node) => [keyOf(node), node]));
  const frozenSteps = steps(frozen.edges);
  const composedSteps = steps(composed.edges);
  for (const node of composed.nodes) {
    const key = keyOf(node);
    const kept = frozenNodes.get(key);
    if (!kept) throw new Broken(record, `${node.title} is missing from its chain`);
    if (said(kept) !== said(node)) throw new Broken(record, `its chain says otherwise of ${node.title}`);
    if ((frozenSteps.get(key) ?? "") !== (composedSteps.get(key) ?? ""))
      throw new Broken(record, `its chain lets ${node.title} stand on something else, or otherwise`);
  }
};

const comparePart = async (tx: Tx, id: string, number: string, position: number | null): Promise<number> => {
  const { parts } = await loadTraceParts(tx, id, position);
  if (parts.results.length === 0) return 0;
  const frozen = await readChain(
    tx,
    "result",
    parts.results.map((result) => result.id),
  );
  if (frozen.nodes.length === 0) return 0;
  demandSame(`chain of certificate ${number}`, composeTrace(parts), frozen);
  return parts.results.length;
};

const compare = async (tx: Tx, id: string, number: string): Promise<number> => {
  let results = 0;
  for (const position of await tracePositions(tx, id)) results += await comparePart(tx, id, number, position);
  return results;
};

/** Composes the chain of every certificate anew from the records it rests on, and compares it with what was frozen. */
export const rederiveChains = async (): Promise<string> => {
  const certificates = await inScope(laboratory, (tx) =>
    tx.certificate.findMany({ select: { id: true, number: true }, orderBy: { number: "asc" } }),
  );
  let results = 0;
  let bare = 0;
  for (const { id, number } of certificates) {
    const found = await inScope(laboratory, (tx) => compare(tx, id, number));
    results += found;
    if (found === 0) bare += 1;
  }
  return `${counted(results, "chain")} composed anew${bare === 0 ? "" : `; ${counted(bare, "certificate")} without one`}`;
};
