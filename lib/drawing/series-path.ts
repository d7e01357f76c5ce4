import { line } from "d3-shape";
import { px } from "@/lib/drawing/scene";
import { thinSeries } from "@/lib/drawing/thin-series";

type Scale = (value: number) => number;

/** Path of one series, thinned to what `columns` px can show, broken where a reading is not a number. */
export function seriesPath(
  seconds: ArrayLike<number>,
  values: ArrayLike<number>,
  x: Scale,
  y: Scale,
  columns: number,
): string {
  const draw = line<number>()
    .defined((index) => Number.isFinite(values[index]) && Number.isFinite(seconds[index]))
    .x((index) => px(x(seconds[index] ?? 0)))
    .y((index) => px(y(values[index] ?? 0)));
  return draw([...thinSeries(values, columns)]) ?? "";
}
