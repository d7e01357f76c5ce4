import { extent } from "@/lib/drawing/extent";
import { fitText } from "@/lib/drawing/fit-text";
import { plotFrame, smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, type Ink, px, type Shape } from "@/lib/drawing/scene";
import { seriesPath } from "@/lib/drawing/series-path";
import { clockText, timeUnit } from "@/lib/drawing/time-axis";
import { type TimeWindow, windowBand } from "@/lib/drawing/window-band";

export type RunStripView = {
  readonly title: string;
  /** Temperature against time, one per reference (or the furnace). */
  readonly traces: readonly {
    readonly label: string;
    readonly seconds: ArrayLike<number>;
    readonly celsius: ArrayLike<number>;
  }[];
  readonly setpoints: readonly { readonly label: string; readonly nominalCelsius: number }[];
  readonly windows: readonly TimeWindow[];
};

const inks: readonly Ink[] = ["line-1", "line-2", "line-3", "line-4", "line-5", "line-6"];

/** The temperature strip of a run: what the furnace did, where it was asked to stand, and when it stood still. */
export function runStrip(view: RunStripView, width = 880): Drawing {
  const narrow = width < 600;
  const height = narrow ? 260 : 300;
  const box = { left: 48, top: 30, right: width - (narrow ? 14 : 70), bottom: height - 42 };
  const times = extent(...view.traces.map((trace) => trace.seconds)) ?? [0, 60];
  const heats = extent(
    ...view.traces.map((trace) => trace.celsius),
    view.setpoints.map((setpoint) => setpoint.nominalCelsius),
  ) ?? [0, 100];
  const unit = timeUnit(times[1] - times[0]);
  const frame = plotFrame(
    box,
    {
      domain: [times[0] / unit.divisor, times[1] / unit.divisor],
      label: `time, ${unit.label}`,
      ticks: narrow ? 4 : 8,
    },
    { domain: heats, label: "temperature, °C", ticks: 5 },
  );
  const shapes: Shape[] = [
    ...frame.ground,
    ...view.windows.flatMap((item) => windowBand(frame, item, unit.divisor)),
  ];
  for (const setpoint of view.setpoints) {
    const at = px(frame.y(setpoint.nominalCelsius));
    shapes.push({ kind: "line", x1: box.left, y1: at, x2: box.right, y2: at, ink: "muted", dash: "1 4" });
    if (!narrow)
      shapes.push({
        kind: "text",
        x: box.right + 8,
        y: px(at + 4),
        text: fitText(setpoint.label, 60, smallText),
        ink: "ink",
        size: smallText,
      });
  }
  for (const [index, trace] of view.traces.entries()) {
    const ink = inks[index % inks.length] ?? "line-1";
    const x = (seconds: number) => frame.x(seconds / unit.divisor);
    const d = seriesPath(trace.seconds, trace.celsius, x, frame.y, box.right - box.left);
    shapes.push({ kind: "path", d, ink, mode: "line", width: 1.5 });
    const keyX = box.right - (view.traces.length - index) * (narrow ? 92 : 150);
    shapes.push({ kind: "line", x1: keyX, y1: 14, x2: keyX + 16, y2: 14, ink, width: 2.5 });
    shapes.push({
      kind: "text",
      x: keyX + 21,
      y: 18,
      text: fitText(trace.label, narrow ? 68 : 124, smallText),
      ink: "ink",
      size: smallText,
    });
  }
  return {
    width,
    height,
    title: view.title,
    description:
      `${view.traces.length} temperature traces over ${clockText(times[1] - times[0])}, ` +
      `${view.setpoints.length} setpoints, ${view.windows.length} stability windows.`,
    shapes,
    table: windowTable(view),
  };
}

function windowTable(view: RunStripView): Drawing["table"] {
  return {
    caption: "Stability windows, counted from the start of the scans",
    columns: [
      { header: "Window" },
      { header: "From", align: "number" },
      { header: "To", align: "number" },
      { header: "Length", align: "number" },
      { header: "State" },
    ],
    rows: view.windows.map((window) => [
      window.label,
      clockText(window.fromSeconds),
      clockText(window.toSeconds),
      clockText(window.toSeconds - window.fromSeconds),
      window.state,
    ]),
  };
}
