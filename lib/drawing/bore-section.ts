import type { BoreView } from "@/lib/drawing/load-view";
import { type Drawing, note, px, type Shape } from "@/lib/drawing/scene";

export type BoreSectionView = {
  readonly title: string;
  /** Clear bore of the tube the block lies in. */
  readonly boreMillimetre: number;
  readonly bores: readonly BoreView[];
};

/** A block seen from the mouth of the tube, its numbered bores to scale. */
export function boreSection(view: BoreSectionView, width = 420): Drawing {
  const radius = px(Math.min(130, width * 0.34));
  const height = px(2 * radius + 24);
  const [cx, cy] = [px(width / 2), px(height / 2)];
  const scale = (2 * radius) / view.boreMillimetre;
  return {
    width,
    height,
    title: view.title,
    description: `${view.bores.length} numbered bores in a tube of ${view.boreMillimetre} mm, to scale, seen from its mouth.`,
    shapes: [
      { kind: "circle", x: cx, y: cy, r: radius, ink: "sunken", mode: "fill" },
      { kind: "circle", x: cx, y: cy, r: radius, ink: "heat", mode: "line", width: 1.5 },
      ...view.bores.flatMap((bore): Shape[] => {
        const [x, y] = [px(cx + bore.xMillimetre * scale), px(cy + bore.yMillimetre * scale)];
        const r = px((bore.diameterMillimetre * scale) / 2);
        return [
          { kind: "circle", x, y, r, ink: "ink", mode: "both", width: 1.5 },
          note(bore.number, x, px(y + 4), "middle", "ink"),
        ];
      }),
    ],
    table: {
      caption: `${view.title}, in mm from the middle`,
      columns: [
        { header: "Bore" },
        { header: "Diameter", unit: "mm", align: "number" },
        { header: "Right", unit: "mm", align: "number" },
        { header: "Down", unit: "mm", align: "number" },
      ],
      rows: view.bores.map((bore) => [
        bore.number,
        String(bore.diameterMillimetre),
        String(bore.xMillimetre),
        String(bore.yMillimetre),
      ]),
    },
  };
}
