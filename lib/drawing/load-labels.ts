import { fitText } from "@/lib/drawing/fit-text";
import type { Spot } from "@/lib/drawing/load-spots";
import { smallText } from "@/lib/drawing/plot-frame";
import { note, px, type Shape, stroke } from "@/lib/drawing/scene";

export type Label = { readonly spot: Spot; readonly side: "left" | "right"; readonly y: number };

/** Height of one label: what stands there, and under it type, channel and junction. */
export const labelHeight = 34;

/** Left half to the left, right half to the right; what stands in the middle goes where there is room. */
const sides = (spots: readonly Spot[]): { left: Spot[]; right: Spot[] } => {
  const left = spots.filter(({ x }) => x < -1);
  const right = spots.filter(({ x }) => x > 1);
  for (const spot of spots.filter(({ x }) => Math.abs(x) <= 1))
    (left.length < right.length ? left : right).push(spot);
  return { left, right };
};

const column = (spots: Spot[], side: Label["side"], height: number): readonly Label[] => {
  const sorted = spots.toSorted((a, b) => a.y - b.y);
  const step = height / Math.max(1, sorted.length);
  return sorted.map((spot, index) => ({ spot, side, y: (index + 0.5) * step }));
};

export const labelRows = (spots: readonly Spot[]): number => {
  const { left, right } = sides(spots);
  return Math.max(left.length, right.length);
};

/** In the order of the load, which is the order of the keyboard. */
export const loadLabels = (spots: readonly Spot[], height: number): readonly Label[] => {
  const { left, right } = sides(spots);
  return [...column(left, "left", height), ...column(right, "right", height)].sort(
    (a, b) => spots.indexOf(a.spot) - spots.indexOf(b.spot),
  );
};

/** From the thing to the edge, at the height of its name. */
export const leader = (
  { spot, side, y }: Label,
  centre: { readonly x: number; readonly y: number },
  reach: number,
): Shape =>
  stroke(
    [px(centre.x + spot.x), px(centre.y + spot.y)],
    [px(centre.x + (side === "left" ? -reach : reach)), px(y)],
    "edge",
  );

/** The name of a thing, with type, channel and junction under it. */
export const labelShapes = (
  { spot, side, y }: Label,
  centre: { readonly x: number; readonly y: number },
  reach: number,
  width: number,
): readonly Shape[] => {
  const { place } = spot;
  const sign = side === "left" ? -1 : 1;
  const edge = px(centre.x + sign * reach);
  const anchor = side === "left" ? "end" : "start";
  const room = (side === "left" ? edge : width - edge) - 8;
  const at = px(edge + sign * 6);
  const what = [place.type, `ch ${place.channel}`, place.junction].filter(Boolean).join(" · ");
  return [
    {
      ...note(fitText(`${place.place}  ${place.label}`, room, smallText), at, px(y - 1), anchor, "ink"),
      bold: place.kind === "reference",
    },
    { ...note(fitText(what, room, smallText - 1), at, px(y + 13), anchor), size: smallText - 1 },
  ];
};
