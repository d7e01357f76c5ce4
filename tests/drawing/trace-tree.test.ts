import { expect, it } from "vitest";
import { textWidth } from "@/lib/drawing/fit-text";
import { type TraceNode, traceTree } from "@/lib/drawing/trace-tree";
import { shapesOf, textsOf, unsound } from "./shapes-of";

const si: TraceNode = { id: "si", label: "SI: kelvin", state: "end", children: [] };
const view = {
  title: "Chain",
  root: {
    id: "r",
    label: "Result at 900 °C",
    state: "subject",
    children: [
      {
        id: "a",
        label: "Reference REF-1",
        state: "valid",
        word: "valid",
        href: "/standards/a",
        children: [si],
      },
      {
        id: "b",
        label: "Scanner SC-1",
        state: "broken",
        word: "out of date",
        note: "certificate 090",
        children: [],
      },
      { id: "c", label: "Voltmeter DMM-3", state: "due", word: "due in 20 days", children: [] },
    ],
  } satisfies TraceNode as TraceNode,
};

it.each([360, 1040])("draws every link of the chain with one line less than links, at %i px", (width) => {
  const drawing = traceTree(view, width);
  const lines = shapesOf(drawing).filter((shape) => shape.kind === "path" && shape.mode === "line");
  expect(drawing.table.rows).toHaveLength(5);
  expect(lines).toHaveLength(4);
  expect(unsound(drawing)).toEqual([]);
  expect(textsOf(drawing).join(" ")).toContain("Scanner SC-1");
});

it("tells a broken branch by its shape, its dashes and its word", () => {
  const shapes = shapesOf(traceTree(view));
  expect(shapes.filter((shape) => shape.kind === "rect" && shape.ink === "bad")).toHaveLength(1);
  expect(shapes.filter((shape) => shape.kind === "path" && shape.dash !== undefined)).toHaveLength(1);
  expect(textsOf(traceTree(view))).toContain("out of date");
  expect(traceTree(view).description).toContain("1 broken");
});

it("opens a link from its own node only", () => {
  const links = traceTree(view).shapes.flatMap((shape) => (shape.kind === "link" ? [shape] : []));
  expect(links.map((link) => [link.href, link.label])).toEqual([["/standards/a", "Reference REF-1"]]);
});

it("keeps long names inside the drawing; the table has them whole", () => {
  const label = "An institute whose name in full is longer than any column of any drawing could ever be";
  const long = { title: "Chain", root: { ...view.root, children: [{ ...si, label }] } };
  for (const width of [360, 1040]) {
    const drawing = traceTree(long, width);
    for (const shape of shapesOf(drawing))
      if (shape.kind === "text")
        expect(shape.x + textWidth(shape.text, shape.size)).toBeLessThanOrEqual(width);
    expect(drawing.table.rows[1]?.[0]).toBe(label);
  }
});

const largest: TraceNode = {
  ...view.root,
  children: [
    {
      id: "run",
      label: "Run R-1",
      state: "valid",
      step: "U = 1.2 °C (k = 2)",
      share: "largest step: 60 % of u²",
      isLargest: true,
      children: view.root.children,
    },
  ],
};

it.each([360, 1040])("rings the largest step a second time and says so, at %i px", (width) => {
  const drawing = traceTree({ title: "Chain", root: largest }, width);
  expect(shapesOf(drawing).filter((shape) => shape.kind === "circle" && shape.r === 10)).toHaveLength(1);
  const share = shapesOf(drawing).find(
    (shape) => shape.kind === "text" && shape.text.startsWith("largest step"),
  );
  expect(share).toMatchObject({ bold: true });
  expect(drawing.description).toContain("Largest step: Run R-1");
  expect(drawing.table.rows[1]).toContain("U = 1.2 °C (k = 2); largest step: 60 % of u²");
});

it("draws a chain that is too deep for columns one step under the other, each a little to the right", () => {
  const deep = Array.from({ length: 9 }).reduce<TraceNode>(
    (child, _, at) => ({
      id: String(at),
      label: `Step ${at}`,
      state: "valid",
      word: "in date",
      note: "of an issuer with a long name",
      children: [child],
    }),
    si,
  );
  const drawing = traceTree({ title: "Chain", root: deep }, 1040);
  const dots = shapesOf(drawing).flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
  expect(dots.map(({ x }) => x)).toEqual(dots.map((_, at) => 12 + 18 * at));
  expect(dots.every(({ y }, at) => at === 0 || y > (dots[at - 1]?.y ?? 0))).toBe(true);
  // Beside each other there is room: the quiet facts share a line.
  expect(textsOf(drawing)).toContain("in date · of an issuer with a long name");
  expect(unsound(drawing)).toEqual([]);
});
