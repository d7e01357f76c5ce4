import { fitText } from "@/lib/drawing/fit-text";
import { inTube, type LoadView, loadTable, typeInk } from "@/lib/drawing/load-view";
import { smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape } from "@/lib/drawing/scene";

/** The load along the tube: how deep each tip sits, measured from the mouth. Tips that do not line up are seen at once. */
export function loadImmersion(view: LoadView, width = 480): Drawing {
  const places = inTube(view);
  const rowHeight = 26;
  const top = 30;
  const labelWidth = px(Math.min(150, width * 0.34));
  const bottom = top + Math.max(places.length, 1) * rowHeight + 8;
  const height = bottom + 40;
  const deepest = Math.max(...places.map((place) => place.immersionMillimetre ?? 0), 100);
  const right = width - 44;
  const scale = (millimetre: number) =>
    px(labelWidth + (millimetre / (deepest * 1.15)) * (right - labelWidth));
  const shapes: Shape[] = [
    {
      kind: "rect",
      x: labelWidth,
      y: top,
      w: px(right - labelWidth),
      h: bottom - top,
      ink: "heat-wash",
      mode: "fill",
    },
    { kind: "line", x1: labelWidth, y1: top, x2: right, y2: top, ink: "heat", width: 2 },
    { kind: "line", x1: labelWidth, y1: bottom, x2: right, y2: bottom, ink: "heat", width: 2 },
    { kind: "text", x: labelWidth, y: top - 10, text: "mouth of the tube", ink: "muted", size: smallText },
    {
      kind: "text",
      x: right,
      y: bottom + 34,
      text: "immersion, mm",
      ink: "muted",
      size: smallText,
      anchor: "end",
    },
  ];
  const step = deepest > 400 ? 200 : deepest > 150 ? 100 : 50;
  for (let at = 0; at <= deepest * 1.15; at += step) {
    shapes.push({ kind: "line", x1: scale(at), y1: bottom, x2: scale(at), y2: bottom + 5, ink: "edge" });
    shapes.push({
      kind: "text",
      x: scale(at),
      y: bottom + 18,
      text: String(at),
      ink: "muted",
      size: smallText,
      anchor: "middle",
    });
  }
  for (const [index, place] of places.entries()) {
    const y = px(top + (index + 0.5) * rowHeight + 4);
    const known = place.immersionMillimetre !== undefined;
    const tip = scale(place.immersionMillimetre ?? deepest * 0.5);
    const reference = place.kind === "reference";
    shapes.push(
      {
        kind: "text",
        x: 0,
        y: y + 4,
        text: fitText(`${place.place}  ${place.label}`, labelWidth - 14, smallText),
        ink: "ink",
        size: smallText,
        bold: reference,
      },
      {
        kind: "line",
        x1: labelWidth - 8,
        y1: y,
        x2: tip,
        y2: y,
        ink: "ink",
        width: reference ? 3 : 1.5,
        dash: known ? undefined : "3 4",
      },
      { kind: "circle", x: tip, y, r: 5, ink: "ink", mode: "both", width: 1.5 },
      { kind: "circle", x: tip, y, r: 3.2, ink: typeInk(place.type), mode: "fill" },
      {
        kind: "text",
        x: px(tip + 11),
        y: y + 4,
        text: known ? String(place.immersionMillimetre) : "not given",
        ink: "ink",
        size: smallText,
      },
    );
  }
  return {
    width,
    height,
    title: `${view.title}, along the tube`,
    description: places
      .map((place) => `${place.label}: ${place.immersionMillimetre ?? "not given"} mm`)
      .join("; "),
    shapes,
    table: loadTable(view),
  };
}
