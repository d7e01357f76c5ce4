import { expect, it } from "vitest";
import { budgetBars } from "@/lib/drawing/budget-bars";
import { shapesOf, textsOf } from "./shapes-of";

// Invented budget: three lines with effects 3, −4, 0, so that u_c = 5 exactly.
const view = {
  title: "Budget",
  unit: "µV",
  contributions: [
    { key: "a", label: "Voltmeter", effect: 3 },
    { key: "b", label: "Junction", effect: -4 },
    { key: "c", label: "Lead", effect: 0 },
  ],
  combined: 5,
};
const drawing = budgetBars(view);
const bars = shapesOf(drawing).flatMap((shape) => (shape.kind === "rect" ? [shape.w] : []));

it("puts the largest by size first, keeps its sign, and does not touch what it was given", () => {
  expect(drawing.table.rows.map((row) => row[0])).toEqual(["Junction", "Voltmeter", "Lead", "Combined"]);
  expect(drawing.table.rows[0]?.[1]).toBe("\u22124.00");
  expect(view.contributions[0]?.key).toBe("a");
});

it("draws lengths in proportion and nothing for a line that is zero", () => {
  const [junction = 0, voltmeter = 0, lead, combined = 0] = bars;
  expect(junction / combined).toBeCloseTo(0.8, 3);
  expect(voltmeter / combined).toBeCloseTo(0.6, 3);
  expect(lead).toBe(0);
});

it("gives each line's share of the variance", () => {
  expect(drawing.table.rows.map((row) => row[2])).toEqual(["64.0 %", "36.0 %", "0.0 %", "100 %"]);
});

it("stays inside its box, narrow too", () => {
  for (const width of [350, 680])
    for (const shape of shapesOf(budgetBars(view, width)))
      if (shape.kind === "rect") expect(shape.x + shape.w).toBeLessThanOrEqual(width - 40);
});

it("survives an empty budget", () => {
  expect(textsOf(budgetBars({ ...view, contributions: [], combined: 0 }))).toContain("combined, µV");
});
