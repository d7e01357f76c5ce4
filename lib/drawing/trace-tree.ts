import { fitText, wrapText } from "@/lib/drawing/fit-text";
import { smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, type Ink, px, type Shape } from "@/lib/drawing/scene";

export type TraceNode = {
  readonly id: string;
  /** What it is: "Reference standard S-01". */
  readonly label: string;
  /** Its certificate, date, due date. */
  readonly note?: string;
  /** valid on the day; due: valid, but not for long; broken: out of date or nothing beneath; end: the SI or a definition. */
  readonly state: "subject" | "valid" | "due" | "broken" | "end";
  /** Says the state in a word, e.g. "valid on 2026-03-04", "out of date". */
  readonly word?: string;
  readonly href?: string;
  readonly children: readonly TraceNode[];
};

export type TraceTreeView = { readonly title: string; readonly root: TraceNode };

type Placed = { readonly node: TraceNode; readonly depth: number; readonly x: number; readonly y: number };
type Edge = { readonly from: Placed; readonly to: Placed };
type Layout = {
  readonly placed: readonly Placed[];
  readonly edges: readonly Edge[];
  readonly height: number;
};

const inkOf: Readonly<Record<TraceNode["state"], Ink>> = {
  subject: "ink",
  valid: "good",
  due: "watch",
  broken: "bad",
  end: "ink",
};

/** Shape before colour: disc valid, triangle due, square broken, ring for the result, bar for the end in the SI. */
function mark(state: TraceNode["state"], x: number, y: number): Shape {
  const ink = inkOf[state];
  if (state === "broken") return { kind: "rect", x: x - 5, y: y - 5, w: 10, h: 10, ink, mode: "fill" };
  if (state === "due")
    return {
      kind: "path",
      d: `M${x},${y - 6}L${x + 6.5},${y + 5}L${x - 6.5},${y + 5}Z`,
      ink,
      mode: "both",
      width: 2,
    };
  if (state === "end") return { kind: "rect", x: x - 2.5, y: y - 9, w: 5, h: 18, ink, mode: "fill" };
  return {
    kind: "circle",
    x,
    y,
    r: state === "subject" ? 6 : 5.5,
    ink,
    mode: state === "subject" ? "both" : "fill",
    width: 2,
  };
}

const depthOf = (node: TraceNode): number => 1 + Math.max(0, ...node.children.map(depthOf));

/** Wide: columns by depth, from the result at the left to the SI at the right. */
function layers(root: TraceNode, columnWidth: number): Layout {
  const placed: Placed[] = [];
  const edges: Edge[] = [];
  let leaf = 0;
  const visit = (node: TraceNode, depth: number): Placed => {
    const below = node.children.map((child) => visit(child, depth + 1));
    const first = below[0];
    const last = below.at(-1);
    const y = first && last ? px((first.y + last.y) / 2) : 34 + 66 * leaf++;
    const here: Placed = { node, depth, x: px(depth * columnWidth + 8), y };
    placed.push(here);
    edges.push(...below.map((to) => ({ from: here, to })));
    return here;
  };
  visit(root, 0);
  return { placed, edges, height: Math.max(leaf, 1) * 66 + 10 };
}

/** Narrow: one node under the other, each step to the right is one step down the chain. */
function steps(root: TraceNode): Layout {
  const placed: Placed[] = [];
  const edges: Edge[] = [];
  const visit = (node: TraceNode, depth: number): Placed => {
    const here: Placed = { node, depth, x: 8 + depth * 18, y: 18 + placed.length * 58 };
    placed.push(here);
    for (const child of node.children) edges.push({ from: here, to: visit(child, depth + 1) });
    return here;
  };
  visit(root, 0);
  return { placed, edges, height: placed.length * 58 + 8 };
}

const elbow = ({ from, to }: Edge): string => `M${from.x},${from.y}V${to.y}H${to.x}`;
const curve = ({ from, to }: Edge, column: number): string => {
  const start = px(from.x + column - 46);
  const middle = px((start + to.x) / 2);
  return `M${start},${from.y}C${middle},${from.y} ${middle},${to.y} ${to.x},${to.y}`;
};

function words(item: Placed, room: number): readonly Shape[] {
  const { node, x, y } = item;
  const size = smallText + 1;
  const label = wrapText(node.label, room, size, 2);
  const start = px(y + 4);
  const shapes: Shape[] = label.map((text, index) => ({
    kind: "text",
    x: x + 14,
    y: start + index * 15,
    text,
    ink: "ink",
    size,
    bold: node.state === "subject" || node.state === "end",
  }));
  const under = [node.word, node.note].filter(Boolean).join(" · ");
  if (under)
    shapes.push({
      kind: "text",
      x: x + 14,
      y: start + label.length * 15,
      text: fitText(under, room, smallText - 1),
      ink: node.state === "broken" ? "bad" : "muted",
      size: smallText - 1,
    });
  return node.href ? [{ kind: "link", href: node.href, label: node.label, shapes }] : shapes;
}

const tableRows = (node: TraceNode, parent: string): string[][] => [
  [node.label, parent, node.word ?? node.state, node.note ?? ""],
  ...node.children.flatMap((child) => tableRows(child, node.label)),
];

/** The chain as a tree that ends in the SI; a branch that does not is drawn broken. */
export function traceTree(view: TraceTreeView, width = 960): Drawing {
  const wide = width >= 700;
  const column = width / depthOf(view.root);
  const layout = wide ? layers(view.root, column) : steps(view.root);
  return {
    width,
    height: layout.height,
    title: view.title,
    description: `${layout.placed.length} links; ${layout.placed.filter((item) => item.node.state === "broken").length} broken.`,
    shapes: [
      ...layout.edges.map(
        (edge): Shape => ({
          kind: "path",
          d: wide ? curve(edge, column) : elbow(edge),
          ink: edge.to.node.state === "broken" ? "bad" : "edge",
          mode: "line",
          width: 1.5,
          dash: edge.to.node.state === "broken" ? "4 4" : undefined,
        }),
      ),
      ...layout.placed.flatMap((item) => [
        mark(item.node.state, item.x, item.y),
        ...words(item, wide ? column - 64 : width - item.x - 18),
      ]),
    ],
    table: {
      caption: view.title,
      columns: [{ header: "What" }, { header: "Carries" }, { header: "State" }, { header: "Evidence" }],
      rows: tableRows(view.root, ""),
    },
  };
}
