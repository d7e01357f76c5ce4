import { expect, it } from "vitest";
import { functionPlot } from "@/lib/drawing/function-plot";
import { shapesOf } from "./shapes-of";

// Invented: a straight line of 1 µV per 100 °C with U = 2 µV, and two points beside it.
const view = {
  title: "Deviation function",
  unit: "µV",
  quantity: "deviation",
  curve: [300, 600, 900].map((celsius) => ({ celsius, value: celsius / 100, expanded: 2 })),
  points: [
    { celsius: 300, value: 3.5, fitted: 3, residual: 0.5 },
    { celsius: 900, value: 8, fitted: 9, residual: -1 },
  ],
};

it("puts a point off the curve by its residual, the band by U, all inside the box", () => {
  for (const width of [360, 640]) {
    const drawing = functionPlot(view, width);
    const circles = shapesOf(drawing).flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
    const [band, curve] = shapesOf(drawing).flatMap((shape) => (shape.kind === "path" ? [shape.d] : []));
    const ys = (d = "") => [...d.matchAll(/,(-?[\d.]+)/g)].map((match) => Number(match[1]));
    const curveY = ys(curve);
    const bandY = ys(band);
    const perMicrovolt = ((curveY[0] ?? 0) - (curveY[2] ?? 0)) / 6;
    expect(circles).toHaveLength(2);
    expect((curveY[0] ?? 0) - (circles[0]?.y ?? 0)).toBeCloseTo(0.5 * perMicrovolt, 0);
    expect((circles[1]?.y ?? 0) - (curveY[2] ?? 0)).toBeCloseTo(perMicrovolt, 0);
    expect((curveY[0] ?? 0) - (bandY[0] ?? 0)).toBeCloseTo(2 * perMicrovolt, 0);
    for (const { x, y } of circles) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(drawing.height);
    }
  }
});

it("has the residuals in its table, minus set as a minus", () => {
  expect(functionPlot(view).table.rows).toEqual([
    ["300", "3.50", "3.00", "0.50"],
    ["900", "8.00", "9.00", "\u22121.00"],
  ]);
});
