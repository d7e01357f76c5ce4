import { describe, expect, it } from "vitest";
import { historyPlot } from "@/lib/drawing/history-plot";

const point = (performedOn: string, errorCelsius: number, expandedCelsius: number) => ({
  ...{ certificate: `C-${performedOn}`, performedOn, errorCelsius, expandedCelsius },
  ...{ error: errorCelsius.toFixed(1), expanded: expandedCelsius.toFixed(1) },
});
const view = {
  setpoint: "600 °C",
  points: [point("2024-03-01", 0.5, 0.9), point("2025-03-01", 0.9, 0.9), point("2026-03-01", 2.4, 1.1)],
};

describe("a sensor's errors over the years", () => {
  it.each([640, 360])("stays within its box at %i px, for one certificate as for many", (width) => {
    for (const points of [view.points, view.points.slice(0, 1)]) {
      const { shapes, height } = historyPlot({ ...view, points }, width);
      const spots = shapes.flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
      expect(spots).toHaveLength(points.length);
      for (const { x, y } of spots) {
        expect(x).toBeGreaterThanOrEqual(60);
        expect(x).toBeLessThanOrEqual(width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(height);
      }
      expect(JSON.stringify(shapes)).not.toMatch(/NaN|Infinity|null/);
    }
  });

  it("draws time to the right and a greater error higher, and gives the same numbers as a table", () => {
    const { shapes, table } = historyPlot(view);
    const spots = shapes.flatMap((shape) => (shape.kind === "circle" ? [shape] : []));
    expect(spots.map(({ x }) => x)).toEqual(spots.map(({ x }) => x).toSorted((a, b) => a - b));
    expect(spots[2]!.y).toBeLessThan(spots[0]!.y);
    expect(table.rows[2]).toEqual(["C-2026-03-01", "2026-03-01", "2.4", "1.1"]);
  });
});
