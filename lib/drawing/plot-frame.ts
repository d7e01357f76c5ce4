import { type ScaleLinear, scaleLinear } from "d3-scale";
import { px, type Shape } from "@/lib/drawing/scene";

export type Box = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

export type Axis = {
  readonly domain: readonly [number, number];
  readonly label: string;
  /** About how many ticks; fewer on a narrow drawing. */
  readonly ticks: number;
  readonly nice?: boolean;
};

export type Frame = {
  readonly box: Box;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  /** Grid and tick labels: draw first, so that the data lies over it. */
  readonly ground: readonly Shape[];
};

export const smallText = 12;

const minus = (text: string): string => text.replace(/^-/, "\u2212");

const widened = ([low, high]: readonly [number, number]): [number, number] =>
  low === high ? [low - 1, high + 1] : [low, high];

/** Axes without a box: faint horizontal lines, ticks as numbers, the unit once at the end of each axis. */
export function plotFrame(box: Box, xAxis: Axis, yAxis: Axis): Frame {
  const x = scaleLinear(widened(xAxis.domain), [box.left, box.right]);
  const y = scaleLinear(widened(yAxis.domain), [box.bottom, box.top]);
  if (xAxis.nice) x.nice(xAxis.ticks);
  if (yAxis.nice !== false) y.nice(yAxis.ticks);
  const xFormat = x.tickFormat(xAxis.ticks, "~f");
  const yFormat = y.tickFormat(yAxis.ticks, "f");
  const ground: Shape[] = [];
  for (const tick of y.ticks(yAxis.ticks)) {
    const at = px(y(tick));
    ground.push({ kind: "line", x1: box.left, y1: at, x2: box.right, y2: at, ink: "faint" });
    ground.push({
      kind: "text",
      x: box.left - 8,
      y: px(at + 4),
      text: minus(yFormat(tick)),
      ink: "muted",
      size: smallText,
      anchor: "end",
    });
  }
  for (const tick of x.ticks(xAxis.ticks)) {
    const at = px(x(tick));
    ground.push({ kind: "line", x1: at, y1: box.bottom, x2: at, y2: box.bottom + 4, ink: "edge" });
    ground.push({
      kind: "text",
      x: at,
      y: box.bottom + 18,
      text: minus(xFormat(tick)),
      ink: "muted",
      size: smallText,
      anchor: "middle",
    });
  }
  ground.push({ kind: "line", x1: box.left, y1: box.bottom, x2: box.right, y2: box.bottom, ink: "edge" });
  ground.push({
    kind: "text",
    x: box.left,
    y: box.top - 12,
    text: yAxis.label,
    ink: "muted",
    size: smallText,
  });
  ground.push({
    kind: "text",
    x: box.right,
    y: box.bottom + 34,
    text: xAxis.label,
    ink: "muted",
    size: smallText,
    anchor: "end",
  });
  return { box, x, y, ground };
}
