import { fitText } from "@/lib/drawing/fit-text";
import {
  inTube,
  kindWord,
  type LoadPlaceView,
  type LoadView,
  loadTable,
  typeInk,
} from "@/lib/drawing/load-view";
import { smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

const half = 180;

/** A reference is a double ring, a sensor one disc; the fill is the insulation colour of its type. */
function bead(place: LoadPlaceView, x: number, y: number, r: number): readonly Shape[] {
  const core: Shape = { kind: "circle", x, y, r: px(r * 0.62), ink: typeInk(place.type), mode: "fill" };
  return place.kind === "reference"
    ? [
        { kind: "circle", x, y, r, ink: "ink", mode: "both", width: 2 },
        { kind: "circle", x, y, r: px(r + 4), ink: "ink", mode: "line", width: 1.5 },
        core,
      ]
    : [{ kind: "circle", x, y, r, ink: "ink", mode: "both", width: 1.5 }, core];
}

function wall(view: LoadView, cx: number, cy: number): readonly Shape[] {
  const tube: readonly Shape[] = [
    { kind: "circle", x: cx, y: cy, r: 118, ink: "sunken", mode: "fill" },
    { kind: "circle", x: cx, y: cy, r: 118, ink: "edge", mode: "line", width: 1.5 },
    { kind: "circle", x: cx, y: cy, r: 106, ink: "heat-wash", mode: "fill" },
    { kind: "circle", x: cx, y: cy, r: 106, ink: "heat", mode: "line", width: 1.5 },
  ];
  return view.configuration === "bare-tube"
    ? tube
    : [
        ...tube,
        { kind: "circle", x: cx, y: cy, r: 94, ink: "surface", mode: "fill" },
        { kind: "circle", x: cx, y: cy, r: 94, ink: "edge", mode: "line", width: 1.5 },
      ];
}

type Spot = { readonly sin: number; readonly cos: number; readonly ring: number; readonly r: number };

/** One thing at its place, with a leader to its name outside the tube. */
function placeShapes(place: LoadPlaceView, spot: Spot, cx: number, cy: number): readonly Shape[] {
  const { sin, cos, ring, r } = spot;
  const x = px(cx + ring * cos);
  const y = px(cy + ring * sin);
  const anchor = cos > 0.25 ? "start" : cos < -0.25 ? "end" : "middle";
  const edge = { x: px(cx + 128 * cos), y: px(cy + 128 * sin) };
  const free = anchor === "start" ? 2 * cx - edge.x : edge.x;
  const room = anchor === "middle" ? cx : Math.max(36, free - 4);
  const first = px(edge.y + (sin < -0.7 ? -12 : sin > 0.7 ? 14 : 0));
  const under = `${place.type ? `${place.type} · ` : ""}${place.place}`;
  return [
    stroke([x, y], [px(cx + 124 * cos), px(cy + 124 * sin)], "edge"),
    ...bead(place, x, y, r),
    {
      ...note(fitText(place.label, room, smallText), edge.x, first, anchor, "ink"),
      bold: place.kind === "reference",
    },
    { ...note(fitText(under, room, smallText - 1), edge.x, px(first + 14), anchor), size: smallText - 1 },
  ];
}

/**
 * The load seen from the mouth of the tube: each thing at its place, clockwise from the top in the order of the load.
 * Angles use Math.sin and cos: a drawing may differ in its last bit between engines and is rounded to 0.01 px.
 */
export function loadSection(view: LoadView, width = 400): Drawing {
  const height = 2 * half - 20;
  const cx = px(width / 2);
  const cy = px(height / 2);
  const places = inTube(view);
  const ring = places.length === 1 ? 0 : view.configuration === "bare-tube" ? 52 : 64;
  const r = places.length > 8 ? 9 : 12;
  const spot = (index: number): Spot => {
    const angle = (index / places.length) * 2 * Math.PI - Math.PI / 2;
    return { sin: Math.sin(angle), cos: Math.cos(angle), ring, r };
  };
  return {
    width,
    height,
    title: `${view.title}, cross-section`,
    description:
      `${view.configuration === "bare-tube" ? "Bare tube" : "Equalising block"}, clockwise from the top: ` +
      `${places.map((place) => `${kindWord(place.kind)} ${place.label}`).join(", ")}.`,
    shapes: [
      ...wall(view, cx, cy),
      ...places.flatMap((place, index) => placeShapes(place, spot(index), cx, cy)),
    ],
    table: loadTable(view),
  };
}
