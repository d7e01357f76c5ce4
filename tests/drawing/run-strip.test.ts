import { expect, it } from "vitest";
import { channelPlot } from "@/lib/drawing/channel-plot";
import { runStrip } from "@/lib/drawing/run-strip";
import { thinSeries } from "@/lib/drawing/thin-series";
import { shapesOf, textsOf, unsound } from "./shapes-of";

const seconds = Float64Array.from({ length: 20_000 }, (_, index) => index * 10);
const celsius = seconds.map((at) => 300 + at / 1000);

const view = {
  title: "Run",
  traces: [{ label: "REF-1", seconds, celsius }],
  setpoints: [{ label: "400 °C", nominalCelsius: 400 }],
  windows: [
    { label: "400 °C", fromSeconds: 90_000, toSeconds: 90_900, state: "accepted" as const },
    { label: "450 °C", fromSeconds: 150_000, toSeconds: 150_600, state: "proposed" as const },
  ],
};

it("keeps a single spike of a long series", () => {
  const spiked = celsius.slice();
  spiked[12_345] = 9999;
  const kept = thinSeries(spiked, 800);
  expect(kept).toContain(12_345);
  expect(kept.length).toBeLessThanOrEqual(800 * 4);
  expect([...kept].sort((a, b) => a - b)).toEqual(kept);
});

it("keeps a reading that is no number as a break in the line", () => {
  const broken = celsius.slice(0, 100);
  broken[50] = Number.NaN;
  const plot = channelPlot({ title: "Channel", unit: "µV", seconds: seconds.slice(0, 100), values: broken });
  const line = shapesOf(plot).find((shape) => shape.kind === "path");
  expect(line?.kind === "path" ? line.d.match(/M/g)?.length : 0).toBe(2);
  expect(plot.table.rows[0]?.[1]).toBe("99");
});

it("sets a window where its seconds are, on the same axis as the readings", () => {
  const drawing = runStrip(view, 960);
  const bands = shapesOf(drawing).flatMap((shape) => (shape.kind === "rect" ? [shape] : []));
  const [first, second] = bands;
  const span = seconds.at(-1) ?? 0;
  const plotWidth = 960 - 48 - 70;
  expect(first?.x).toBeCloseTo(48 + (90_000 / span) * plotWidth, 1);
  expect(second?.w).toBeCloseTo((600 / span) * plotWidth, 1);
});

it("tells a proposed window from an accepted one by its line, not by colour only", () => {
  const lines = shapesOf(runStrip(view)).filter((shape) => shape.kind === "line" && shape.ink === "heat");
  expect(lines.map((line) => (line.kind === "line" ? line.dash : ""))).toEqual([undefined, "4 3"]);
});

it("writes the windows down as a table", () => {
  expect(runStrip(view).table.rows[0]).toEqual([
    "400 °C",
    "25 h 00 min 00 s",
    "25 h 15 min 00 s",
    "15 min 00 s",
    "accepted",
  ]);
});

it("draws a run without readings as an empty frame", () => {
  const empty = runStrip({ title: "Run", traces: [], setpoints: [], windows: [] });
  expect(unsound(empty)).toEqual([]);
  expect(textsOf(empty)).toContain("temperature, °C");
});

it("is the same picture each time", () => {
  expect(JSON.stringify(runStrip(view))).toBe(JSON.stringify(runStrip(view)));
});
