import { extent } from "@/lib/drawing/extent";
import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape } from "@/lib/drawing/scene";
import { seriesPath } from "@/lib/drawing/series-path";
import { clockText, timeAxis, timeUnit } from "@/lib/drawing/time-axis";
import { type TimeWindow, windowBand } from "@/lib/drawing/window-band";

export type ChannelPlotView = {
  readonly title: string;
  readonly unit: string;
  readonly seconds: ArrayLike<number>;
  readonly values: ArrayLike<number>;
  readonly windows?: readonly TimeWindow[];
  /** Readings left out with a reason: drawn as open squares, never hidden. */
  readonly excluded?: readonly number[];
};

type Summary = { readonly count: number; readonly low: number; readonly high: number; readonly mean: number };

function summary(view: ChannelPlotView, from: number, to: number): Summary {
  let count = 0;
  let total = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < view.values.length; index += 1) {
    const at = view.seconds[index] ?? Number.NaN;
    const value = view.values[index] ?? Number.NaN;
    if (!(at >= from && at <= to) || !Number.isFinite(value)) continue;
    count += 1;
    total += value;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { count, low, high, mean: total / count };
}

const shown = (value: number): string =>
  Number.isFinite(value) ? value.toFixed(3).replace(/^-/, "\u2212") : "none";

type Span = Pick<TimeWindow, "label" | "fromSeconds" | "toSeconds">;

const channelTable = (view: ChannelPlotView, spans: readonly Span[]): Drawing["table"] => ({
  caption: view.title,
  columns: [
    { header: "Part" },
    { header: "Readings", align: "number" },
    { header: "Lowest", unit: view.unit, align: "number" },
    { header: "Mean", unit: view.unit, align: "number" },
    { header: "Highest", unit: view.unit, align: "number" },
  ],
  rows: spans.map((span) => {
    const part = summary(view, span.fromSeconds, span.toSeconds);
    return [span.label, String(part.count), shown(part.low), shown(part.mean), shown(part.high)];
  }),
});

/** One channel as it was read. The table sums up each window; the readings themselves are behind the run's export. */
export function channelPlot(view: ChannelPlotView, width = 880): Drawing {
  const narrow = width < 600;
  const height = narrow ? 200 : 210;
  const box = { left: 64, top: 28, right: width - 14, bottom: height - 42 };
  const times = extent(view.seconds) ?? [0, 60];
  const unit = timeUnit(times[1] - times[0]);
  const frame = plotFrame(box, timeAxis(times, unit, narrow ? 4 : 8), {
    domain: extent(view.values) ?? [0, 1],
    label: `reading, ${view.unit}`,
    ticks: 4,
  });
  const x = (seconds: number) => frame.x(seconds / unit.divisor);
  const windows = view.windows ?? [];
  const d = seriesPath(view.seconds, view.values, x, frame.y, box.right - box.left);
  const excluded = (view.excluded ?? []).filter((index) => Number.isFinite(view.values[index]));
  const shapes: readonly Shape[] = [
    ...frame.ground,
    ...windows.flatMap((item) => windowBand(frame, item, unit.divisor)),
    { kind: "path", d, ink: "line-1", mode: "line", width: 1.5 },
    ...excluded.map((index): Shape => {
      const at = { x: px(x(view.seconds[index] ?? 0) - 4), y: px(frame.y(view.values[index] ?? 0) - 4) };
      return { kind: "rect", ...at, w: 8, h: 8, ink: "bad", mode: "both", width: 1.5 };
    }),
  ];
  const whole: Span = { label: "Whole channel", fromSeconds: times[0], toSeconds: times[1] };
  return {
    width,
    height,
    title: view.title,
    description: `${view.values.length} readings over ${clockText(times[1] - times[0])}, ${windows.length} windows.`,
    shapes,
    table: channelTable(view, [whole, ...windows]),
  };
}
