import { fitText } from "@/lib/drawing/fit-text";
import { smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

export type BudgetBarsView = {
  readonly title: string;
  readonly unit: string;
  /** Signed: sensitivity × standard uncertainty. */
  readonly contributions: readonly {
    readonly key: string;
    readonly label: string;
    readonly effect: number;
  }[];
  /** u_c */
  readonly combined: number;
};

/** Three significant digits: a budget is read by size, and the exact value is in the budget's own table. */
const threeDigits = (value: number): string => {
  if (value === 0) return "0";
  const size = Math.abs(value);
  const text = size >= 1e-3 && size < 999.5 ? value.toPrecision(3) : String(Number(value.toPrecision(3)));
  return text.replace(/^-/, "\u2212");
};

const share = (effect: number, combined: number): string =>
  combined > 0 ? `${(((effect * effect) / (combined * combined)) * 100).toFixed(1)} %` : "none";

type Grid = {
  readonly width: number;
  readonly label: number;
  readonly row: number;
  readonly narrow: boolean;
};
type Line = { readonly label: string; readonly effect: number; readonly rank: "first" | "other" | "total" };

const inkOf = { first: "line-1", other: "edge", total: "ink" } as const;

function barRow(line: Line, index: number, largest: number, grid: Grid): readonly Shape[] {
  const total = line.rank === "total";
  const top = index * grid.row + (total ? 8 : 0);
  const barTop = grid.narrow ? top + 19 : top + 5;
  const room = grid.width - grid.label - 70;
  const length = Math.max(px((Math.abs(line.effect) / largest) * room), line.effect === 0 ? 0 : 0.75);
  const size = smallText + 1;
  const text = fitText(line.label, grid.narrow ? grid.width - 8 : grid.label - 12, size);
  return [
    { kind: "text", x: 0, y: top + 15, text, ink: "ink", size, bold: line.rank !== "other" },
    { kind: "rect", x: grid.label, y: barTop, w: length, h: 13, ink: inkOf[line.rank], mode: "fill" },
    {
      ...note(threeDigits(line.effect), px(grid.label + length + 7), barTop + 11),
      ink: total ? "ink" : "muted",
      bold: total,
    },
  ];
}

type Contributions = BudgetBarsView["contributions"];

const budgetTable = (view: BudgetBarsView, lines: Contributions): Drawing["table"] => ({
  caption: view.title,
  columns: [
    { header: "Contribution" },
    { header: "Effect", unit: view.unit, align: "number" },
    { header: "Share of the variance", align: "number" },
  ],
  rows: [
    ...lines.map((item) => [item.label, threeDigits(item.effect), share(item.effect, view.combined)]),
    ["Combined", threeDigits(view.combined), "100 %"],
  ],
});

/** A budget as bars, largest first. Length is |effect|; the number keeps its sign; the largest stands out. */
export function budgetBars(view: BudgetBarsView, width = 640): Drawing {
  const narrow = width < 500;
  const lines = [...view.contributions].sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
  const grid: Grid = { width, narrow, label: narrow ? 0 : px(width * 0.4), row: narrow ? 38 : 24 };
  const largest = Math.max(view.combined, ...lines.map((item) => Math.abs(item.effect)), 1e-12);
  const foot = lines.length * grid.row + 3;
  const sum: Line = { label: `combined, ${view.unit}`, effect: view.combined, rank: "total" };
  return {
    width,
    height: (lines.length + 1) * grid.row + 10,
    title: view.title,
    description: lines[0]
      ? `${lines.length} contributions in ${view.unit}, largest first: ${lines[0].label}.`
      : "No contributions.",
    shapes: [
      ...lines.flatMap(({ label, effect }, index) =>
        barRow({ label, effect, rank: index === 0 ? "first" : "other" }, index, largest, grid),
      ),
      stroke([0, foot], [width, foot], "edge"),
      ...barRow(sum, lines.length, largest, grid),
    ],
    table: budgetTable(view, lines),
  };
}
