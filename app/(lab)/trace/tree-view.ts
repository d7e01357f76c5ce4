import type { TraceNode } from "@/lib/domain/trace/trace-certificate";
import type { TraceTreeView } from "@/lib/drawing/trace-tree";
import type { TracePage } from "@/lib/views/trace-page";

type DrawnNode = TraceTreeView["root"];

const words = {
  "in-date": "in date on the day",
  "not-in-date": "not in date on the day",
  "no-certificate": "no certificate",
  "not-dated": "no due date stated",
} as const;

const stateOf = (node: TraceNode): DrawnNode["state"] => {
  if (node.kind === "result") return "subject";
  if (node.kind === "realisation") return "end";
  if (node.standing === "in-date") return "valid";
  return node.standing === "not-dated" ? "due" : "broken";
};

const drawn = (node: TraceNode, tagOf: (id: string) => string | undefined): DrawnNode => {
  const tag = node.kind === "equipment" ? tagOf(node.id) : undefined;
  return {
    id: node.id,
    label: node.title,
    note: node.detail,
    state: stateOf(node),
    ...(node.kind === "calibration" || node.standing === "no-certificate"
      ? { word: words[node.standing] }
      : {}),
    ...(tag ? { href: `/standards/${tag}` } : {}),
    children: node.children.map((child) => drawn(child, tagOf)),
  };
};

/** The chain as the drawing takes it. */
export const treeView = (page: TracePage): TraceTreeView => ({
  title: `From ${page.number} to the SI`,
  root: drawn(page.trace.root, (id) => page.trace.lines[Number(id.split("-").at(-1))]?.standard.tag),
});
