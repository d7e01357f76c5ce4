import { describe, expect, it } from "vitest";
import { boreSection } from "@/lib/drawing/bore-section";
import { positionsMap } from "@/lib/drawing/positions-map";
import { profilePlot } from "@/lib/drawing/profile-plot";
import { stabilityStrip } from "@/lib/drawing/stability-strip";
import { shapesOf, textsOf, unsound } from "./shapes-of";

const profile = {
  title: "Axial uniformity at 1000 °C",
  against: "against the mean of the length",
  points: [350, 370, 400, 430].map((millimetre) => ({
    millimetre,
    celsius: -(((millimetre - 400) / 100) ** 2),
    isInside: millimetre >= 370,
  })),
  expandedCelsius: 0.1,
  fromMillimetre: 370,
  toMillimetre: 430,
};

describe("a profile along the tube", () => {
  it("shades the stated length, bands the profile by U, and opens the stops outside", () => {
    for (const width of [360, 640]) {
      const drawing = profilePlot(profile, width);
      expect(unsound(drawing)).toEqual([]);
      const [length] = shapesOf(drawing).flatMap((shape) => (shape.kind === "rect" ? [shape] : []));
      const stops = shapesOf(drawing).flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
      expect(length?.x).toBe(stops[1]?.x);
      expect((length?.x ?? 0) + (length?.w ?? 0)).toBeCloseTo(stops[3]?.x ?? 0, 1);
      expect(stops.map(({ mode }) => mode)).toEqual(["both", "fill", "fill", "fill"]);
    }
    expect(profilePlot(profile).table.rows[0]).toEqual(["350", "\u22120.250", "no"]);
  });
});

describe("a map of positions", () => {
  const places = [
    { place: "1", celsius: 0, expandedCelsius: 0 },
    { place: "2", celsius: 0.21, expandedCelsius: 0.04 },
    { place: "3", celsius: -0.13, expandedCelsius: 0.04 },
  ];
  const bores = [
    { number: "1", diameterMillimetre: 8, xMillimetre: 0, yMillimetre: 0 },
    { number: "2", diameterMillimetre: 6, xMillimetre: 15, yMillimetre: 0 },
    { number: "3", diameterMillimetre: 6, xMillimetre: -15, yMillimetre: 0 },
  ];

  it("stands in the bores to scale, and else round the centre", () => {
    const block = positionsMap({ title: "Positions", places, bores, boreMillimetre: 50 });
    const circles = shapesOf(block).flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
    const scale = (2 * (circles[0]?.r ?? 0)) / 50;
    expect((circles[3]?.x ?? 0) - (circles[2]?.x ?? 0)).toBeCloseTo(15 * scale, 1);
    expect(circles[3]?.r).toBeCloseTo(3 * scale, 1);
    expect(block.description).toContain("to scale");
    const bundle = positionsMap({ title: "Positions", places, bores: [], boreMillimetre: 50 }, 360);
    expect(bundle.description).toContain("not scale");
    expect(unsound(block).concat(unsound(bundle))).toEqual([]);
  });

  it("shows a block's bores to scale with their numbers, and in a table", () => {
    const block = boreSection({ title: "Bores", boreMillimetre: 50, bores });
    const circles = shapesOf(block).flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
    expect((circles[3]?.x ?? 0) - (circles[4]?.x ?? 0)).toBeCloseTo((30 * 2 * (circles[0]?.r ?? 0)) / 50, 1);
    expect(textsOf(block)).toEqual(["1", "2", "3"]);
    expect(block.table.rows[1]).toEqual(["2", "6", "15", "0"]);
  });

  it("says each difference by its sign and in its table", () => {
    const drawing = positionsMap({ title: "Positions", places, bores: [], boreMillimetre: 50 });
    expect(textsOf(drawing)).toEqual(["1", "0", "2", "+0.21", "3", "\u22120.13"]);
    expect(drawing.table.rows[2]).toEqual(["3", "\u22120.130", "0.040"]);
  });
});

describe("a strip of stability", () => {
  it("marks the steepest window where it is", () => {
    const readings = Array.from({ length: 31 }, (_, minutes) => ({ minutes, celsius: 1000 + minutes / 100 }));
    const view = { title: "Stability", readings, windowMinutes: 10, fromMinutes: 5, changeCelsius: 0.1 };
    for (const width of [360, 640]) {
      const drawing = stabilityStrip(view, width);
      expect(unsound(drawing)).toEqual([]);
      const [band] = shapesOf(drawing).flatMap((shape) => (shape.kind === "rect" ? [shape] : []));
      expect(band?.w).toBeCloseTo((width - 76) / 3, 0);
      expect(drawing.table.rows).toHaveLength(31);
    }
  });
});
