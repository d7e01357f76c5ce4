import { type Chain, keyOf } from "./chain";
import { indexChain } from "./find-breaks";

/** The part of a chain that one thing in it stands on, itself included. */
export const chainFrom = (chain: Chain, top: string): Chain => {
  const { beneath } = indexChain(chain);
  const reached = new Set<string>();
  const open = [top];
  for (let key = open.pop(); key !== undefined; key = open.pop()) {
    if (reached.has(key)) continue;
    reached.add(key);
    open.push(...(beneath.get(key) ?? []).map(({ to }) => to));
  }
  return {
    nodes: chain.nodes.filter((node) => reached.has(keyOf(node))),
    edges: chain.edges.filter(({ from }) => reached.has(from)),
  };
};
