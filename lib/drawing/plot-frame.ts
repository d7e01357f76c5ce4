import { type ScaleLinear, scaleLinear } from "d3-scale";
import { note, px, type Shape, stroke } from "@/lib/drawing/scene";

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
  /** How a tick is written; as a number unless told. */
  readonly write?: (value: number) => string;
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
  const { left, top, right, bottom } = box;
  const ground: Shape[] = [];
  for (const tick of y.ticks(yAxis.ticks)) {
    const at = px(y(tick));
    ground.push(stroke([left, at], [right, at], "faint"));
    ground.push(note(minus(yFormat(tick)), left - 8, px(at + 4), "end"));
  }
  for (const tick of x.ticks(xAxis.ticks)) {
    const at = px(x(tick));
    ground.push(stroke([at, bottom], [at, bottom + 4], "edge"));
    ground.push(note(xAxis.write?.(tick) ?? minus(xFormat(tick)), at, bottom + 18, "middle"));
  }
  ground.push(stroke([left, bottom], [right, bottom], "edge"));
  ground.push(note(yAxis.label, left, top - 12));
  ground.push(note(xAxis.label, right, bottom + 34, "end"));
  return { box, x, y, ground };
}
