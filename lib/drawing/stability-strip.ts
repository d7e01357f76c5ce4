import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px } from "@/lib/drawing/scene";
import { windowBand } from "@/lib/drawing/window-band";

export type StabilityStripView = {
  readonly title: string;
  readonly readings: readonly { readonly minutes: number; readonly celsius: number }[];
  readonly windowMinutes: number;
  /** Where the steepest window begins. */
  readonly fromMinutes: number;
  readonly changeCelsius: number;
};

/** A monitor over time, with the steepest of all windows marked. */
export function stabilityStrip(view: StabilityStripView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 220 : 240;
  const box = { left: 60, top: 30, right: width - 16, bottom: height - 42 };
  const minutes = view.readings.map((one) => one.minutes);
  const celsius = view.readings.map((one) => one.celsius);
  const frame = plotFrame(
    box,
    { domain: [Math.min(...minutes), Math.max(...minutes)], label: "time, min", ticks: narrow ? 4 : 8 },
    { domain: [Math.min(...celsius), Math.max(...celsius)], label: "monitor, °C", ticks: 5 },
  );
  const path = view.readings
    .map((one) => `${px(frame.x(one.minutes))},${px(frame.y(one.celsius))}`)
    .join("L");
  const window = {
    label: "steepest window",
    fromSeconds: view.fromMinutes,
    toSeconds: view.fromMinutes + view.windowMinutes,
    state: "accepted",
  } as const;
  return {
    width,
    height,
    title: view.title,
    description: `${view.readings.length} readings over ${minutes.at(-1)} minutes; the steepest window begins at minute ${view.fromMinutes} and changes by ${view.changeCelsius.toFixed(3)} °C.`,
    shapes: [
      ...windowBand(frame, window, 1),
      ...frame.ground,
      { kind: "path", d: `M${path}`, ink: "line-1", mode: "line", width: 1.5 },
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Time", unit: "min", align: "number" },
        { header: "Monitor", unit: "°C", align: "number" },
      ],
      rows: view.readings.map((one) => [String(one.minutes), one.celsius.toFixed(3)]),
    },
  };
}
