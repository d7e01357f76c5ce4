import { expect, it } from "vitest";
import { deviationPlot } from "@/lib/drawing/deviation-plot";
import { shapesOf, unsound } from "./shapes-of";

const point = (nominalCelsius: number, value: number) => ({
  nominalCelsius,
  value,
  expanded: 1,
  printed: { value: value.toFixed(1), expanded: "1.0" },
});

const view = {
  title: "Errors",
  unit: "°C",
  quantity: "error",
  points: [point(900, -2), point(300, 1), point(1100, 0)],
  tolerance: [
    { celsius: 300, limit: 1.5 },
    { celsius: 1000, limit: 4 },
    { celsius: 1000, limit: null },
  ],
};

it("orders the points by temperature and prints what the certificate prints", () => {
  expect(deviationPlot(view).table.rows).toEqual([
    ["300", "1.0", "1.0"],
    ["900", "\u22122.0", "1.0"],
    ["1100", "0.0", "1.0"],
  ]);
});

it("draws a bar of ±U about each value", () => {
  const shapes = shapesOf(deviationPlot(view));
  const discs = shapes.flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
  for (const disc of discs) {
    const bar = shapes.find(
      (shape) =>
        shape.kind === "line" &&
        shape.x1 === disc.x &&
        shape.x2 === disc.x &&
        shape.y1 !== shape.y2 &&
        shape.ink === "line-1",
    );
    if (bar?.kind !== "line") throw new Error("a point without its bar");
    expect((bar.y1 + bar.y2) / 2).toBeCloseTo(disc.y, 1);
  }
  expect(discs).toHaveLength(3);
});

it("ends the tolerance where none is defined", () => {
  const tolerance = shapesOf(deviationPlot(view)).filter(
    (shape) => shape.kind === "path" && shape.ink === "bad",
  );
  expect(tolerance).toHaveLength(2);
  const discs = shapesOf(deviationPlot(view)).flatMap((shape) => (shape.kind === "circle" ? [shape.x] : []));
  for (const line of tolerance) {
    const xs =
      line.kind === "path" ? [...line.d.matchAll(/[ML]([\d.]+),/g)].map((match) => Number(match[1])) : [];
    expect(xs).toHaveLength(2);
    expect(Math.max(...xs)).toBeLessThan(discs[2] ?? 0);
  }
});

it("says no statement where none was made, and only when some were", () => {
  const stated = { ...view, points: [{ ...point(300, 1), statement: "Pass" }, point(900, 0)] };
  expect(deviationPlot(stated).table.rows.map((row) => row[3])).toEqual(["Pass", "no statement"]);
  expect(deviationPlot(view).table.columns).toHaveLength(3);
});

it("draws one point, and none, without choking", () => {
  expect(unsound(deviationPlot({ ...view, points: [point(600, 0)], tolerance: undefined }))).toEqual([]);
  expect(unsound(deviationPlot({ ...view, points: [] }))).toEqual([]);
});
