import { extent } from "@/lib/drawing/extent";
import { fitText } from "@/lib/drawing/fit-text";
import { type Frame, plotFrame, smallText } from "@/lib/drawing/plot-frame";
import { type Drawing, type Ink, note, px, type Shape, stroke } from "@/lib/drawing/scene";
import { seriesPath } from "@/lib/drawing/series-path";
import { clockText, timeAxis, timeUnit } from "@/lib/drawing/time-axis";
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

/** A setpoint as asked for: a dotted line, named at its end where there is room. */
function setpointShapes(
  setpoint: RunStripView["setpoints"][number],
  frame: Frame,
  narrow: boolean,
): readonly Shape[] {
  const { left, right } = frame.box;
  const at = px(frame.y(setpoint.nominalCelsius));
  const line = stroke([left, at], [right, at], "muted", 1, "1 4");
  const label = fitText(setpoint.label, 60, smallText);
  return narrow ? [line] : [line, note(label, right + 8, px(at + 4), "start", "ink")];
}

/** Each trace with its key above the plot, right-aligned as a row. */
function traceShapes(view: RunStripView, frame: Frame, divisor: number, narrow: boolean): readonly Shape[] {
  const { left, right } = frame.box;
  const x = (seconds: number) => frame.x(seconds / divisor);
  return view.traces.flatMap((trace, index): readonly Shape[] => {
    const ink = inks[index % inks.length] ?? "line-1";
    const d = seriesPath(trace.seconds, trace.celsius, x, frame.y, right - left);
    const key = right - (view.traces.length - index) * (narrow ? 92 : 150);
    return [
      { kind: "path", d, ink, mode: "line", width: 1.5 },
      stroke([key, 14], [key + 16, 14], ink, 2.5),
      note(fitText(trace.label, narrow ? 68 : 124, smallText), key + 21, 18, "start", "ink"),
    ];
  });
}

/** The temperature strip of a run: what the furnace did, where it was asked to stand, and when it stood still. */
export function runStrip(view: RunStripView, width = 880): Drawing {
  const narrow = width < 600;
  const height = narrow ? 260 : 300;
  const box = { left: 48, top: 30, right: width - (narrow ? 14 : 70), bottom: height - 42 };
  const times = extent(...view.traces.map((trace) => trace.seconds)) ?? [0, 60];
  const nominals = view.setpoints.map((setpoint) => setpoint.nominalCelsius);
  const heats = extent(...view.traces.map((trace) => trace.celsius), nominals) ?? [0, 100];
  const unit = timeUnit(times[1] - times[0]);
  const frame = plotFrame(box, timeAxis(times, unit, narrow ? 4 : 8), {
    domain: heats,
    label: "temperature, °C",
    ticks: 5,
  });
  return {
    width,
    height,
    title: view.title,
    description:
      `${view.traces.length} temperature traces over ${clockText(times[1] - times[0])}, ` +
      `${view.setpoints.length} setpoints, ${view.windows.length} stability windows.`,
    shapes: [
      ...frame.ground,
      ...view.windows.flatMap((item) => windowBand(frame, item, unit.divisor)),
      ...view.setpoints.flatMap((setpoint) => setpointShapes(setpoint, frame, narrow)),
      ...traceShapes(view, frame, unit.divisor, narrow),
    ],
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
