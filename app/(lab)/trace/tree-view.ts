import type { ChainTree } from "@/lib/domain/trace/chain-tree";
import { daysWord, nameOf, shareWord, uncertaintyWord } from "@/lib/domain/trace/chain-words";
import type { TraceTreeView } from "@/lib/drawing/trace-tree";
import { recordHref } from "./record-href";

type DrawnNode = TraceTreeView["root"];

const breakWords = {
  "no-certificate": "gap: no certificate",
  "not-in-date": "gap: not in date when used",
  "gap-in-time": "gap in time",
  "no-uncertainty": "gap: no uncertainty stated",
  "smaller-than-parent": "gap: U smaller than beneath",
  "end-not-reached": "gap: ends before the SI",
  "not-characterised": "gap: characterisation not in date",
  circle: "gap: stands on itself",
} as const;

const stateOf = (tree: ChainTree): DrawnNode["state"] => {
  if (tree.breaks.length > 0) return "broken";
  if (tree.edge === null) return "subject";
  return tree.isEnd ? "end" : "valid";
};

/** The state in words: what is wrong, or in date on the days it was used. */
export const stateWord = (tree: ChainTree): string => {
  const [first, ...others] = tree.breaks;
  if (first) return `${breakWords[first.code]}${others.length === 0 ? "" : ` and ${others.length} more`}`;
  if (tree.isAgain) return "as drawn above";
  if (tree.isEnd)
    return tree.node.facts.byRoute ? "end, by the route of its certificate" : "end of the chain";
  if (tree.node.kind === "standard" && tree.edge?.validUntil) return `in date, to ${tree.edge.validUntil}`;
  if (tree.node.kind === "run") return daysOfRun(tree);
  return daysWord(tree);
};

const daysOfRun = ({ node }: ChainTree): string =>
  node.facts.performedFrom === node.facts.performedTo
    ? (node.facts.performedTo ?? "")
    : `${node.facts.performedFrom ?? ""} to ${node.facts.performedTo ?? ""}`;

const noteOf = ({ node, left }: ChainTree): string =>
  left === 0 ? node.detail : `${node.detail}; ${left} more points of that certificate`;

const drawn = (tree: ChainTree, above: string | undefined): DrawnNode => {
  const href = recordHref(tree.node, above);
  return {
    id: tree.id,
    label: nameOf(tree).replaceAll(/ (?=°)/g, "\u00a0"),
    note: noteOf(tree),
    state: stateOf(tree),
    word: stateWord(tree),
    step: uncertaintyWord(tree),
    share: shareWord(tree),
    isLargest: tree.isLargest,
    ...(href ? { href } : {}),
    children: tree.children.map((child) => drawn(child, href)),
  };
};

/** The chain as the drawing takes it. */
export const treeView = (tree: ChainTree, title: string): TraceTreeView => ({
  title,
  root: drawn(tree, undefined),
});
