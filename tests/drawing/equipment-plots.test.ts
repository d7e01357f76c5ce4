import { describe, expect, it } from "vitest";
import { checkPlot } from "@/lib/drawing/check-plot";
import { driftPlot } from "@/lib/drawing/drift-plot";

const point = (value: number, more: object = {}) => ({
  on: "2026-01-01",
  value,
  limit: 0.5,
  passed: true,
  broken: [] as readonly string[],
  ...more,
});

describe("checkPlot", () => {
  const limits = { centre: 0, warning: [-0.2, 0.2], action: [-0.3, 0.3] } as const;

  it("marks by shape what failed or breaks a rule, and has every check in its table", () => {
    const points = [point(0.1), point(0.4, { broken: ["beyond 3 s"] }), point(0.6, { passed: false })];
    const drawing = checkPlot({ title: "ice", unit: "°C", points, limits });
    expect(drawing.shapes.filter(({ kind }) => kind === "circle")).toHaveLength(1);
    expect(drawing.shapes.filter(({ kind }) => kind === "rect")).toHaveLength(2);
    expect(drawing.description).toContain("2 marked by a square");
    expect(drawing.table.rows.map((row) => row.slice(2))).toEqual([
      ["+0.100", "± 0.5", "passed", "none"],
      ["+0.400", "± 0.5", "passed", "beyond 3 s"],
      ["+0.600", "± 0.5", "failed", "none"],
    ]);
  });

  it("draws no limits where there are none", () => {
    const dashed = (limited: typeof limits | null) =>
      checkPlot({ title: "ice", unit: "°C", points: [point(0.1)], limits: limited }).shapes.filter(
        (shape) => shape.kind === "line" && shape.dash,
      ).length;
    expect([dashed(limits), dashed(null)]).toEqual([4, 0]);
  });
});

describe("driftPlot", () => {
  const points = [
    { certificate: "A", performedOn: "2024-07-01", hours: 0, changeCelsius: 0, expandedCelsius: 0.4 },
    { certificate: "B", performedOn: "2025-07-01", hours: 120.5, changeCelsius: -0.12, expandedCelsius: 0.4 },
  ];
  const view = { title: "REF at 1100 °C", points, allowedCelsius: 0.25 };

  it("sets the points by date or by hours, with the same table", () => {
    const spots = (against: "date" | "hours") =>
      driftPlot({ ...view, against }).shapes.flatMap((shape) => (shape.kind === "circle" ? [shape.x] : []));
    for (const against of ["date", "hours"] as const) {
      const [first = 0, second = 0] = spots(against);
      expect(second).toBeGreaterThan(first);
    }
    expect(driftPlot({ ...view, against: "hours" }).table.rows).toEqual([
      ["A", "2024-07-01", "0.0", "+0.000", "0.40"],
      ["B", "2025-07-01", "120.5", "−0.120", "0.40"],
    ]);
  });

  it("holds within its box on a narrow page", () => {
    for (const shape of driftPlot({ ...view, against: "date" }, 360).shapes)
      if (shape.kind === "circle") {
        expect(shape.x).toBeGreaterThan(0);
        expect(shape.x).toBeLessThan(360);
      }
  });
});
