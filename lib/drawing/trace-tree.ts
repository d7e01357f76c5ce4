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
  /** What this step adds: "U = 0.3 °C (k = 2)", and its part of the whole. */
  readonly step?: string;
  readonly share?: string;
  /** The step that brings the most uncertainty: ringed twice, and its share in strong letters. */
  readonly isLargest?: boolean;
  readonly href?: string;
  readonly children: readonly TraceNode[];
};

export type TraceTreeView = { readonly title: string; readonly root: TraceNode };

type Placed = { readonly node: TraceNode; readonly depth: number; readonly x: number; readonly y: number };
type Edge = { readonly from: Placed; readonly to: Placed };
type Layout = {
  readonly isWide: boolean;
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

/** The largest step wears a second ring, whatever its state. */
const largestRing = ({ node, x, y }: Placed): readonly Shape[] =>
  node.isLargest ? [{ kind: "circle", x, y, r: 10, ink: "ink", mode: "line", width: 2 }] : [];

const depthOf = (node: TraceNode): number => 1 + Math.max(0, ...node.children.map(depthOf));

/** Wide: columns by depth, from the result at the left to the SI at the right. */
function layers(root: TraceNode, columnWidth: number): Layout {
  const placed: Placed[] = [];
  const edges: Edge[] = [];
  const most = Math.max(...every(root).map((node) => linesOf(node, columnWidth - columnGap).length));
  const pitch = 20 + 15 * most;
  let leaf = 0;
  const visit = (node: TraceNode, depth: number): Placed => {
    const below = node.children.map((child) => visit(child, depth + 1));
    const first = below[0];
    const last = below.at(-1);
    const y = first && last ? px((first.y + last.y) / 2) : 24 + pitch * leaf++;
    const here: Placed = { node, depth, x: px(depth * columnWidth + 12), y };
    placed.push(here);
    edges.push(...below.map((to) => ({ from: here, to })));
    return here;
  };
  visit(root, 0);
  return { isWide: true, placed, edges, height: Math.max(leaf, 1) * pitch + 4 };
}

const every = (node: TraceNode): readonly TraceNode[] => [node, ...node.children.flatMap(every)];

type Line = {
  readonly text: string;
  readonly size: number;
  readonly ink: Ink;
  readonly strong: boolean;
};

const nameSize = smallText + 1;

/** The words of a node, broken to its room: what it is, its state, what it adds, its evidence. */
function linesOf(node: TraceNode, room: number, isCompact = false): readonly Line[] {
  const size = smallText - 1;
  const strong = node.state === "subject" || node.state === "end";
  const facts = [
    { text: node.word, ink: node.state === "broken" ? "bad" : "muted", strong: false },
    { text: node.step, ink: "muted", strong: false },
    { text: node.share, ink: "muted", strong: node.isLargest === true },
    { text: node.note, ink: "muted", strong: false },
  ].flatMap(({ text, ...rest }) => (text ? [{ text, size, ...rest }] : [])) as Line[];
  const name = { size: nameSize, ink: "ink" as const, strong };
  return [
    ...wrapText(node.label, room, nameSize, 4).map((text) => ({ text, ...name })),
    ...(isCompact ? inOneLine(facts) : facts).map((line) => ({
      ...line,
      text: fitText(line.text, room, size),
    })),
  ];
}

/** Where there is room beside, the quiet facts share a line; what has to stand out keeps its own. */
function inOneLine(facts: readonly Line[]): readonly Line[] {
  const quiet = facts.filter((line) => line.ink === "muted" && !line.strong);
  const [first] = quiet;
  const loud = facts.filter((line) => !quiet.includes(line));
  return first ? [...loud, { ...first, text: quiet.map(({ text }) => text).join(" · ") }] : loud;
}

/** From here on a drawing is that of a screen, not of a telephone. */
const wideFrom = 700;

/** A step to the right in the narrow layout: small, because an in-house standard makes the chain twice as long. */
const indent = 18;

/** Narrow, or too deep for columns: one node under the other, each step to the right is one step down the chain. */
function steps(root: TraceNode, width: number): Layout {
  const placed: Placed[] = [];
  const edges: Edge[] = [];
  let y = 18;
  const visit = (node: TraceNode, depth: number): Placed => {
    const here: Placed = { node, depth, x: 12 + depth * indent, y };
    placed.push(here);
    y += 20 + linesOf(node, width - here.x - 18, width >= wideFrom).length * 15;
    for (const child of node.children) edges.push({ from: here, to: visit(child, depth + 1) });
    return here;
  };
  visit(root, 0);
  return { isWide: false, placed, edges, height: y - 8 };
}

const elbow = ({ from, to }: Edge): string => `M${from.x},${from.y}V${to.y}H${to.x}`;
const curve = ({ from, to }: Edge, room: number): string => {
  const end = Math.max(...linesOf(from.node, room).map((line) => textWidth(line.text, line.size)));
  const start = px(Math.min(from.x + 24 + end, to.x - 24));
  const middle = px((start + to.x) / 2);
  return `M${start},${from.y}C${middle},${from.y} ${middle},${to.y} ${px(to.x - 9)},${to.y}`;
};

/** The name is the link, and what is seen of it is what it is called; the facts beneath are read beside it. */
function words({ node, x, y }: Placed, room: number, isCompact: boolean): readonly Shape[] {
  const shapes = linesOf(node, room, isCompact).map((line, index) => ({
    isName: line.size === nameSize,
    text: line.text,
    shape: {
      kind: "text",
      x: px(x + 14),
      y: px(y + 4 + index * 15),
      // Two lines of one name are two words to whoever hears them.
      text: line.size === nameSize ? `${line.text} ` : line.text,
      ink: line.ink,
      size: line.size,
      bold: line.strong,
    } satisfies Shape,
  }));
  if (!node.href) return shapes.map(({ shape }) => shape);
  const name = shapes.filter(({ isName }) => isName);
  return [
    {
      kind: "link",
      href: node.href,
      label: name.map(({ text }) => text).join(" "),
      shapes: name.map(({ shape }) => shape),
    },
    ...shapes.filter(({ isName }) => !isName).map(({ shape }) => shape),
  ];
}

const soundness = (edge: Edge): number => (edge.to.node.state === "broken" ? 0 : 1);

const tableRows = (node: TraceNode, parent: string): string[][] => [
  [
    node.label,
    parent,
    node.word ?? node.state,
    [node.step, node.share].filter(Boolean).join("; "),
    node.note ?? "",
  ],
  ...node.children.flatMap((child) => tableRows(child, node.label)),
];

/** Room that a column leaves to the lines between it and the next. */
const columnGap = 52;
/** Under this, a name in a column is more ellipsis than name. */
const leastColumn = 170;

const seen = ({ placed }: Layout): string => {
  const broken = placed.filter((item) => item.node.state === "broken");
  const largest = placed.find((item) => item.node.isLargest);
  return [
    `${placed.length} links; ${broken.length} broken${broken.length === 0 ? "" : `: ${broken.map(({ node }) => node.label).join(", ")}`}.`,
    largest ? ` Largest step: ${largest.node.label}.` : "",
  ].join("");
};

/** The chain as a tree that ends in the SI; a branch that does not is drawn broken. */
export function traceTree(view: TraceTreeView, width = 960): Drawing {
  const column = width / depthOf(view.root);
  const layout =
    width >= wideFrom && column >= leastColumn ? layers(view.root, column) : steps(view.root, width);
  const { isWide } = layout;
  const room = column - columnGap;
  return {
    width,
    height: layout.height,
    title: view.title,
    description: seen(layout),
    shapes: [
      // A sound branch is drawn over a broken one where they share a stem.
      ...[...layout.edges]
        .sort((a, b) => soundness(a) - soundness(b))
        .map(
          (edge): Shape => ({
            kind: "path",
            d: isWide ? curve(edge, room) : elbow(edge),
            ink: edge.to.node.state === "broken" ? "bad" : "edge",
            mode: "line",
            width: 1.5,
            dash: edge.to.node.state === "broken" ? "4 4" : undefined,
          }),
        ),
      ...layout.placed.flatMap((item) => [
        mark(item.node.state, item.x, item.y),
        ...largestRing(item),
        ...words(item, isWide ? room : width - item.x - 18, !isWide && width >= wideFrom),
      ]),
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "What" },
        { header: "Carries" },
        { header: "State" },
        { header: "Uncertainty" },
        { header: "Evidence" },
      ],
      rows: tableRows(view.root, ""),
    },
  };
}
