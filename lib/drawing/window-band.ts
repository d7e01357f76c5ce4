import type { Frame } from "@/lib/drawing/plot-frame";
import { px, type Shape } from "@/lib/drawing/scene";

export type TimeWindow = {
  readonly label: string;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly state: "proposed" | "accepted";
};

/** A stability window: a warm band; a closed top when accepted, a dashed one while only proposed. */
export function windowBand(frame: Frame, window: TimeWindow, divisor: number): readonly Shape[] {
  const left = px(frame.x(window.fromSeconds / divisor));
  const right = px(frame.x(window.toSeconds / divisor));
  const { top, bottom } = frame.box;
  const width = Math.max(px(right - left), 1.5);
  const dash = window.state === "proposed" ? "4 3" : undefined;
  return [
    { kind: "rect", x: left, y: top, w: width, h: bottom - top, ink: "heat-wash", mode: "fill" },
    { kind: "line", x1: left, y1: top, x2: px(left + width), y2: top, ink: "heat", width: 2.5, dash },
  ];
}
