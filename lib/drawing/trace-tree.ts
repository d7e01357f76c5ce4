import { fitText, textWidth, wrapText } from "@/lib/drawing/fit-text";
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
    const y = first && last ? px((first.y + last.y) / 2) : 24 + 78 * leaf++;
    const here: Placed = { node, depth, x: px(depth * columnWidth + 8), y };
    placed.push(here);
    edges.push(...below.map((to) => ({ from: here, to })));
    return here;
  };
  visit(root, 0);
  return { placed, edges, height: Math.max(leaf, 1) * 78 + 4 };
}

type Line = { readonly text: string; readonly size: number; readonly strong: boolean };

/** The words of a node, broken to its room: what it is, its state, its evidence. */
function linesOf(node: TraceNode, room: number): readonly Line[] {
  const small = smallText - 1;
  const strong = node.state === "subject" || node.state === "end";
  return [
    ...wrapText(node.label, room, smallText + 1, 2).map((text) => ({ text, size: smallText + 1, strong })),
    ...[node.word, node.note]
      .filter((text) => text !== undefined && text !== "")
      .map((text) => ({ text: fitText(text ?? "", room, small), size: small, strong: false })),
  ];
}

/** Narrow: one node under the other, each step to the right is one step down the chain. */
function steps(root: TraceNode, width: number): Layout {
  const placed: Placed[] = [];
  const edges: Edge[] = [];
  let y = 18;
  const visit = (node: TraceNode, depth: number): Placed => {
    const here: Placed = { node, depth, x: 8 + depth * 18, y };
    placed.push(here);
    y += 20 + linesOf(node, width - here.x - 18).length * 15;
    for (const child of node.children) edges.push({ from: here, to: visit(child, depth + 1) });
    return here;
  };
  visit(root, 0);
  return { placed, edges, height: y - 8 };
}

const elbow = ({ from, to }: Edge): string => `M${from.x},${from.y}V${to.y}H${to.x}`;
const curve = ({ from, to }: Edge, room: number): string => {
  const end = Math.max(...linesOf(from.node, room).map((line) => textWidth(line.text, line.size)));
  const start = px(Math.min(from.x + 24 + end, to.x - 24));
  const middle = px((start + to.x) / 2);
  return `M${start},${from.y}C${middle},${from.y} ${middle},${to.y} ${px(to.x - 9)},${to.y}`;
};

function words({ node, x, y }: Placed, room: number): readonly Shape[] {
  const shapes = linesOf(node, room).map(
    (line, index): Shape => ({
      kind: "text",
      x: px(x + 14),
      y: px(y + 4 + index * 15),
      text: line.text,
      ink: line.size > smallText ? "ink" : node.state === "broken" ? "bad" : "muted",
      size: line.size,
      bold: line.strong,
    }),
  );
  return node.href ? [{ kind: "link", href: node.href, label: node.label, shapes }] : shapes;
}

const soundness = (edge: Edge): number => (edge.to.node.state === "broken" ? 0 : 1);

const tableRows = (node: TraceNode, parent: string): string[][] => [
  [node.label, parent, node.word ?? node.state, node.note ?? ""],
  ...node.children.flatMap((child) => tableRows(child, node.label)),
];

/** The chain as a tree that ends in the SI; a branch that does not is drawn broken. */
export function traceTree(view: TraceTreeView, width = 960): Drawing {
  const wide = width >= 700;
  const column = width / depthOf(view.root);
  const room = column - 60;
  const layout = wide ? layers(view.root, column) : steps(view.root, width);
  return {
    width,
    height: layout.height,
    title: view.title,
    description: `${layout.placed.length} links; ${layout.placed.filter((item) => item.node.state === "broken").length} broken.`,
    shapes: [
      // A sound branch is drawn over a broken one where they share a stem.
      ...[...layout.edges]
        .sort((a, b) => soundness(a) - soundness(b))
        .map(
          (edge): Shape => ({
            kind: "path",
            d: wide ? curve(edge, room) : elbow(edge),
            ink: edge.to.node.state === "broken" ? "bad" : "edge",
            mode: "line",
            width: 1.5,
            dash: edge.to.node.state === "broken" ? "4 4" : undefined,
          }),
        ),
      ...layout.placed.flatMap((item) => [
        mark(item.node.state, item.x, item.y),
        ...words(item, wide ? room : width - item.x - 18),
      ]),
    ],
    table: {
      caption: view.title,
      columns: [{ header: "What" }, { header: "Carries" }, { header: "State" }, { header: "Evidence" }],
      rows: tableRows(view.root, ""),
    },
  };
}
