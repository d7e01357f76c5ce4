import { expect, it } from "vitest";
import { custodyLine } from "@/lib/drawing/custody-line";
import { shapesOf, textsOf, unsound } from "./shapes-of";

const common = { from: "", to: "", condition: "", by: "A" };
const view = {
  title: "Custody of T-1",
  steps: [
    { ...common, label: "Received", day: "2026-03-01", at: "2026-03-01T09:00:00Z", isOutside: false },
    {
      ...common,
      label: "Sent to a provider",
      day: "2026-03-01",
      at: "2026-03-01T15:00:00Z",
      isOutside: true,
    },
    {
      ...common,
      label: "Back from a provider",
      day: "2026-03-11",
      at: "2026-03-11T15:00:00Z",
      isOutside: false,
    },
  ],
};

it("draws each step once, with how long it stayed so, dashed and open while it was out", () => {
  for (const width of [640, 340]) {
    const drawing = custodyLine(view, width);
    expect(unsound(drawing)).toEqual([]);
    for (const text of ["Received", "6 h", "10 d"]) expect(textsOf(drawing)).toContain(text);
    const shapes = shapesOf(drawing);
    expect(shapes.flatMap((shape) => (shape.kind === "line" ? [shape.dash] : []))).toEqual([
      undefined,
      "2 4",
    ]);
    expect(shapes.flatMap((shape) => (shape.kind === "circle" ? [shape.mode] : []))).toEqual([
      "fill",
      "line",
      "fill",
    ]);
  }
});

it("has the log as its table, and says where it ended", () => {
  const { table, description } = custodyLine(view);
  expect(table.rows.map(([when, what]) => [when, what])).toEqual([
    ["2026-03-01 09:00 UTC", "Received"],
    ["2026-03-01 15:00 UTC", "Sent to a provider"],
    ["2026-03-11 15:00 UTC", "Back from a provider"],
  ]);
  expect(description).toContain("the last: Back from a provider");
  expect(custodyLine({ ...view, steps: [] }).description).toBe("0 steps.");
});
