import { type BoreView, inTube, type LoadPlaceView, type LoadView } from "@/lib/drawing/load-view";

/** A thing in the cross-section: px from the middle of the tube. `bore` where it stands in one of the block. */
export type Spot = {
  readonly place: LoadPlaceView;
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly bore: BoreView | null;
};

const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

/** The bore that a place names: "3" is bore 3. */
export const boreOf = (view: LoadView, place: string): BoreView | null =>
  view.bores?.find(({ number }) => number === place.trim()) ?? null;

/** Equally spaced on a circle, clockwise from the top. */
const ring = (places: readonly LoadPlaceView[], radius: number, r: number): readonly Spot[] =>
  places.map((place, index) => {
    const angle = (index / places.length) * 2 * Math.PI - Math.PI / 2;
    return { place, x: radius * Math.cos(angle), y: radius * Math.sin(angle), r, bore: null };
  });

/** A bundle is tied round its reference: references in the middle, sensors about them. */
const bundle = (places: readonly LoadPlaceView[], radius: number): readonly Spot[] => {
  const references = places.filter(({ kind }) => kind === "reference");
  const sensors = places.filter(({ kind }) => kind === "sensor");
  const r = clamp(radius / (1.6 + places.length / 3), 6, radius * 0.16);
  const core = references.length < 2 ? 0 : r * 1.9;
  const about = Math.max(core + r * 3.4, (sensors.length * r * 3) / (2 * Math.PI));
  return [...ring(references, core, r), ...ring(sensors, clamp(about, 0, radius * 0.82), r)];
};

/**
 * Where each thing stands, seen from the mouth of the tube. A block with its bores recorded is to scale; a bundle, and a
 * place that names no bore, is drawn in order, not to scale. `radius`: of the tube's bore, in px.
 */
export const loadSpots = (view: LoadView, radius: number): readonly Spot[] => {
  const places = inTube(view);
  if (view.configuration === "bare-tube") return bundle(places, radius);
  const scale = radius / ((view.boreMillimetre ?? 2 * radius) / 2);
  const bored = places.flatMap((place) => {
    const bore = boreOf(view, place.place);
    if (!bore) return [];
    const own = ((place.diameterMillimetre ?? bore.diameterMillimetre * 0.8) * scale) / 2;
    const wall = (bore.diameterMillimetre * scale) / 2;
    return [
      {
        place,
        x: bore.xMillimetre * scale,
        y: bore.yMillimetre * scale,
        r: Math.max(4, Math.min(own, wall)),
        bore,
      },
    ];
  });
  const rest = places.filter((place) => !boreOf(view, place.place));
  const r = clamp(radius / 9, 7, 12);
  // With no bore recorded at all the ring is the picture; otherwise it lies outside the bores and says so.
  return [
    ...bored,
    ...ring(rest, rest.length === 1 && bored.length === 0 ? 0 : radius * (bored.length ? 0.94 : 0.6), r),
  ];
};
