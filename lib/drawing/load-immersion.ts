import { fitText } from "@/lib/drawing/fit-text";
import { inTube, type LoadPlaceView, type LoadView, loadTable, typeInk } from "@/lib/drawing/load-view";
import { smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

/** The tube as it lies: mouth at the left, `at` turns mm of immersion into px. */
type Tube = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly deepest: number;
  /** Length of tube that is drawn, mm. */
  readonly shown: number;
  readonly at: (millimetre: number) => number;
};

const rowHeight = 26;

function tubeOf(view: LoadView, width: number): Tube {
  const places = inTube(view);
  const left = px(Math.min(150, width * 0.34));
  const right = width - 44;
  const top = 30;
  const bottom = top + Math.max(places.length, 1) * rowHeight + 8;
  const deepest = Math.max(...places.map((place) => place.immersionMillimetre ?? 0), 100);
  // The whole tube where its length is known; otherwise a little more than the deepest tip.
  const shown = Math.max(view.lengthMillimetre ?? 0, deepest * 1.15);
  const at = (millimetre: number) => px(left + (millimetre / shown) * (right - left));
  return { left, right, top, bottom, deepest, shown, at };
}

function tubeShapes({ left, right, top, bottom, shown, at }: Tube): readonly Shape[] {
  const step = shown > 460 ? 200 : shown > 170 ? 100 : 50;
  const ticks = Array.from({ length: Math.floor(shown / step) + 1 }, (_, index) => index * step);
  return [
    { kind: "rect", x: left, y: top, w: px(right - left), h: bottom - top, ink: "heat-wash", mode: "fill" },
    stroke([left, top], [right, top], "heat", 2),
    stroke([left, bottom], [right, bottom], "heat", 2),
    note("mouth of the tube", left, bottom + 34),
    note("immersion, mm", right, bottom + 34, "end"),
    ...ticks.flatMap((tick) => [
      stroke([at(tick), bottom], [at(tick), bottom + 5], "edge"),
      note(String(tick), at(tick), bottom + 18, "middle"),
    ]),
  ];
}

/** Where the furnace is most uniform, as its record says: tips belong at this line. */
const bestShapes = (best: number | undefined, tube: Tube): readonly Shape[] =>
  best === undefined
    ? []
    : [
        stroke([tube.at(best), tube.top], [tube.at(best), tube.bottom], "heat", 1.5, "5 4"),
        note(`most uniform at ${best} mm`, tube.at(best), tube.top - 10, "middle", "ink"),
      ];

/** One thing, from outside the mouth to its tip; an immersion that is not given is dashed and says so. */
function placeShapes(place: LoadPlaceView, index: number, tube: Tube): readonly Shape[] {
  const y = px(tube.top + (index + 0.5) * rowHeight + 4);
  const known = place.immersionMillimetre !== undefined;
  const tip = tube.at(place.immersionMillimetre ?? tube.deepest * 0.5);
  const reference = place.kind === "reference";
  const name = fitText(`${place.place}  ${place.label}`, tube.left - 14, smallText);
  return [
    { ...note(name, 0, y + 4, undefined, "ink"), bold: reference },
    stroke([tube.left - 8, y], [tip, y], "ink", reference ? 3 : 1.5, known ? undefined : "3 4"),
    { kind: "circle", x: tip, y, r: 5, ink: "ink", mode: "both", width: 1.5 },
    { kind: "circle", x: tip, y, r: 3.2, ink: typeInk(place.type), mode: "fill" },
    note(known ? String(place.immersionMillimetre) : "not given", px(tip + 11), y + 4, undefined, "ink"),
  ];
}

/** The load along the tube: how deep each tip sits, measured from the mouth. Tips that do not line up are seen at once. */
export function loadImmersion(view: LoadView, width = 480): Drawing {
  const places = inTube(view);
  const tube = tubeOf(view, width);
  return {
    width,
    height: tube.bottom + 40,
    title: `${view.title}, along the tube`,
    description: places
      .map((place) => `${place.label}: ${place.immersionMillimetre ?? "not given"} mm`)
      .join("; "),
    shapes: [
      ...tubeShapes(tube),
      ...bestShapes(view.bestImmersionMillimetre, tube),
      ...places.flatMap((place, index) => placeShapes(place, index, tube)),
    ],
    table: loadTable(view),
  };
}
