import { type Chain, type ChainEdge, type ChainNode, chainEnds } from "./chain";
import { type ChainBreak, indexChain } from "./find-breaks";
import type { LargestStep } from "./largest-step";

/** A chain as it is read: from the thing asked about, step by step to an end. */
export type ChainTree = {
  /** Unique in the tree. */
  readonly id: string;
  readonly node: ChainNode;
  /** The step that leads here; null at the top. */
  readonly edge: ChainEdge | null;
  readonly breaks: readonly ChainBreak[];
  /** Part of the result's u_c² that comes in here. */
  readonly share: number | null;
  readonly isLargest: boolean;
  /** Drawn before with all beneath it. */
  readonly isAgain: boolean;
  /** Results of the same certificate that are not drawn, being further from the temperature it was used at. */
  readonly left: number;
  readonly isEnd: boolean;
  readonly children: readonly ChainTree[];
};

/** Of the many points of an in-house certificate, those on each side of the temperature it was used at. */
const nearest = (edges: readonly ChainEdge[], celsius: number | null): readonly ChainEdge[] => {
  if (celsius === null) return edges;
  const distance = ({ atCelsius }: ChainEdge) => Math.abs((atCelsius ?? celsius) - celsius);
  const side = (isOn: (edge: ChainEdge) => boolean) =>
    edges.filter(isOn).sort((a, b) => distance(a) - distance(b))[0];
  const below = side(({ atCelsius }) => (atCelsius ?? celsius) <= celsius);
  const above = side(({ atCelsius }) => (atCelsius ?? celsius) > celsius);
  const exact = below?.atCelsius === celsius;
  return [below, exact ? undefined : above].flatMap((edge) => (edge ? [edge] : []));
};

type Context = {
  readonly celsius: number | null;
  /** The result whose budget tells the shares; null under another one's chain. */
  readonly shares: Readonly<Record<string, number>> | null;
};

const shareOf = (edge: ChainEdge | null, { shares }: Context): number | null => {
  if (!edge) return null;
  if (edge.sensitivity !== null) return edge.sensitivity;
  return shares && edge.role !== "calibration" ? (shares[edge.role] ?? null) : null;
};

/** The tree of a chain from one of its nodes: a thing that several others stand on is drawn once in full. */
export const chainTree = (
  chain: Chain,
  top: string,
  breaks: readonly ChainBreak[],
  largest: LargestStep | null,
): ChainTree | null => {
  const { nodes, beneath } = indexChain(chain);
  const drawn = new Set<string>();
  const visit = (key: string, edge: ChainEdge | null, path: string, above: Context): ChainTree | null => {
    const node = nodes.get(key);
    if (!node) return null;
    const id = `${path}/${key}`;
    const isAgain = drawn.has(key);
    drawn.add(key);
    const context: Context = {
      celsius: node.facts.celsius ?? above.celsius,
      shares: node.kind === "result" ? (path === "" ? (node.facts.shares ?? null) : null) : above.shares,
    };
    const all = isAgain ? [] : (beneath.get(key) ?? []);
    const own = all.filter(({ role }) => role === "in-house");
    const kept = [...all.filter(({ role }) => role !== "in-house"), ...nearest(own, context.celsius)];
    return {
      id,
      node,
      edge,
      breaks: breaks.filter((one) => one.key === key),
      share: shareOf(edge, above),
      isLargest: largest?.key === key && !isAgain,
      isAgain: isAgain && (beneath.get(key) ?? []).length > 0,
      left: all.length - kept.length,
      isEnd: chainEnds.includes(node.kind),
      children: kept.flatMap((next) => visit(next.to, next, id, context) ?? []),
    };
  };
  return visit(top, null, "", { celsius: null, shares: null });
};

/** Every line of a tree, from the top down. */
export const treeLines = (tree: ChainTree): readonly ChainTree[] => [
  tree,
  ...tree.children.flatMap(treeLines),
];
