import { labelHeight, labelRows, labelShapes, leader, loadLabels } from "@/lib/drawing/load-labels";
import { loadSpots, type Spot } from "@/lib/drawing/load-spots";
import { type BoreView, kindWord, type LoadView, loadTable, typeInk } from "@/lib/drawing/load-view";
import { type Drawing, note, px, type Shape } from "@/lib/drawing/scene";

type Centre = { readonly x: number; readonly y: number };

/** A reference is a double ring, a sensor one disc; the fill is the insulation colour of its type. */
function bead({ place, r, ...at }: Spot, centre: Centre): readonly Shape[] {
  const x = px(centre.x + at.x);
  const y = px(centre.y + at.y);
  const core: Shape = { kind: "circle", x, y, r: px(r * 0.62), ink: typeInk(place.type), mode: "fill" };
  return place.kind === "reference"
    ? [
        { kind: "circle", x, y, r: px(r), ink: "ink", mode: "both", width: 2 },
        { kind: "circle", x, y, r: px(r + 4), ink: "ink", mode: "line", width: 1.5 },
        core,
      ]
    : [{ kind: "circle", x, y, r: px(r), ink: "ink", mode: "both", width: 1.5 }, core];
}

function wall(view: LoadView, { x, y }: Centre, radius: number): readonly Shape[] {
  const ringOf = (r: number, ink: "sunken" | "heat-wash" | "surface", edge: "edge" | "heat"): Shape[] => [
    { kind: "circle", x, y, r: px(r), ink, mode: "fill" },
    { kind: "circle", x, y, r: px(r), ink: edge, mode: "line", width: 1.5 },
  ];
  const tube = [...ringOf(radius * 1.11, "sunken", "edge"), ...ringOf(radius, "heat-wash", "heat")];
  return view.configuration === "bare-tube" ? tube : [...tube, ...ringOf(radius * 0.89, "surface", "edge")];
}

/** A bore of the block, to scale; one that stays empty shows its number. */
function boreShapes(bore: BoreView, isFilled: boolean, centre: Centre, scale: number): readonly Shape[] {
  const x = px(centre.x + bore.xMillimetre * scale);
  const y = px(centre.y + bore.yMillimetre * scale);
  const r = px((bore.diameterMillimetre * scale) / 2);
  const hole: Shape = { kind: "circle", x, y, r, ink: "edge", mode: "both", width: 1 };
  return isFilled ? [hole] : [hole, note(bore.number, x, px(y + 4), "middle")];
}

const whereSentence = (view: LoadView, spots: readonly Spot[]): string => {
  const stray = spots.filter(({ bore }) => !bore);
  if (view.configuration === "bare-tube")
    return "Bundle in the bare tube, references in its middle; order, not scale.";
  if (!view.bores?.length) return "Equalising block, its bores not recorded: order, not scale.";
  if (stray.length === 0) return "Equalising block, its bores to scale.";
  return `Equalising block, its bores to scale; in no bore: ${stray.map(({ place }) => place.label).join(", ")}.`;
};

/**
 * The load seen from the mouth of the tube: bundle or block, each thing at its place with channel and junction beside it.
 * Angles use Math.sin and cos: a drawing may differ in its last bit between engines and is rounded to 0.01 px.
 */
export function loadSection(view: LoadView, width = 420): Drawing {
  const radius = px(Math.min(106, width * 0.19));
  const spots = loadSpots(view, radius);
  const height = Math.max(px(radius * 2.22 + 60), labelRows(spots) * labelHeight + 16);
  const centre = { x: px(width / 2), y: px(height / 2) };
  const scale = radius / ((view.boreMillimetre ?? 2 * radius) / 2);
  const labels = loadLabels(spots, height);
  const reach = radius * 1.11 + 8;
  const filled = new Set(spots.flatMap(({ bore }) => bore?.number ?? []));
  return {
    width,
    height,
    title: `${view.title}, cross-section`,
    description: `${whereSentence(view, spots)} ${spots
      .map(({ place }) => `${place.place}: ${kindWord(place.kind)} ${place.label}, channel ${place.channel}`)
      .join("; ")}.`,
    shapes: [
      ...wall(view, centre, radius),
      ...(view.configuration === "equalising-block" ? (view.bores ?? []) : []).flatMap((bore) =>
        boreShapes(bore, filled.has(bore.number), centre, scale),
      ),
      ...labels.map((label) => leader(label, centre, reach)),
      ...labels.flatMap((label): readonly Shape[] => {
        const shapes = [...labelShapes(label, centre, reach, width), ...bead(label.spot, centre)];
        const { place } = label.spot;
        return place.href
          ? [{ kind: "link", href: place.href, label: `Place ${place.place}, ${place.label}`, shapes }]
          : shapes;
      }),
    ],
    table: loadTable(view),
  };
}
