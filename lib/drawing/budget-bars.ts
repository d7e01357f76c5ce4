import { fitText } from "@/lib/drawing/fit-text";
import { smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape } from "@/lib/drawing/scene";

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

/** A budget as bars, largest first. Length is |effect|; the number keeps its sign; the largest stands out. */
export function budgetBars(view: BudgetBarsView, width = 640): Drawing {
  const narrow = width < 500;
  const lines = [...view.contributions].sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
  const rowHeight = narrow ? 38 : 24;
  const labelWidth = narrow ? 0 : px(width * 0.4);
  const valueWidth = 62;
  const room = width - labelWidth - valueWidth - 8;
  const largest = Math.max(view.combined, ...lines.map((item) => Math.abs(item.effect)), 1e-12);
  const height = (lines.length + 1) * rowHeight + 10;
  const row = (
    label: string,
    effect: number,
    index: number,
    first: boolean,
    total: boolean,
  ): readonly Shape[] => {
    const top = index * rowHeight + (total ? 8 : 0);
    const barTop = narrow ? top + 19 : top + 5;
    const length = Math.max(px((Math.abs(effect) / largest) * room), effect === 0 ? 0 : 0.75);
    const text = fitText(label, narrow ? width - 8 : labelWidth - 12, smallText + 1);
    return [
      { kind: "text", x: 0, y: top + 15, text, ink: "ink", size: smallText + 1, bold: total || first },
      {
        kind: "rect",
        x: labelWidth,
        y: barTop,
        w: length,
        h: 13,
        ink: total ? "ink" : first ? "line-1" : "edge",
        mode: "fill",
      },
      {
        kind: "text",
        x: px(labelWidth + length + 7),
        y: barTop + 11,
        text: threeDigits(effect),
        ink: total ? "ink" : "muted",
        size: smallText,
        bold: total,
      },
    ];
  };
  const foot = lines.length * rowHeight + 3;
  return {
    width,
    height,
    title: view.title,
    description: lines[0]
      ? `${lines.length} contributions in ${view.unit}, largest first: ${lines[0].label}.`
      : "No contributions.",
    shapes: [
      ...lines.flatMap((item, index) => row(item.label, item.effect, index, index === 0, false)),
      { kind: "line", x1: 0, y1: foot, x2: width, y2: foot, ink: "edge" },
      ...row(`combined, ${view.unit}`, view.combined, lines.length, false, true),
    ],
    table: {
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
    },
  };
}
