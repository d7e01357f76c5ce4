import { describe, expect, it } from "vitest";
import { furnaceQueue } from "@/lib/drawing/furnace-queue";
import { shapesOf, textsOf, unsound } from "./shapes-of";

const slot = (startsAt: string, endsAt: string, more: object = {}) => ({
  ...{ startsAt: `${startsAt}Z`, endsAt: `${endsAt}Z`, note: "3 sensors", order: "O-2026-0001" },
  ...{ isExpress: false, promisedOn: "2026-03-12", ...more },
});
const view = {
  now: "2026-03-09T10:00:00Z",
  furnaces: [
    {
      ...{ tag: "FUR-01", name: "One" },
      slots: [
        slot("2026-03-09T08:00:00", "2026-03-09T20:00:00"),
        slot("2026-03-10T08:00:00", "2026-03-10T20:00:00", { isExpress: true, order: "O-2026-0002" }),
        slot("2027-03-10T08:00:00", "2027-03-10T20:00:00"),
      ],
    },
    { tag: "FUR-02", name: "Two", slots: [] },
  ],
};

describe("the queue of the furnaces", () => {
  it.each([760, 350])(
    "draws a bar for each load, in its furnace's row and within the box, %i px wide",
    (width) => {
      const drawing = furnaceQueue(view, width);
      expect(unsound(drawing)).toEqual([]);
      const bars = shapesOf(drawing).flatMap((shape) => (shape.kind === "rect" ? [shape] : []));
      expect(bars).toHaveLength(3);
      for (const { x, w } of bars) expect(x + w).toBeLessThanOrEqual(width);
      expect((bars[0]?.x ?? 0) < (bars[1]?.x ?? 0)).toBe(true);
      expect(textsOf(drawing)).toEqual(expect.arrayContaining(["FUR-01", "FUR-02", "03-09"]));
      expect(drawing.shapes.filter(({ kind }) => kind === "link")).toHaveLength(3);
    },
  );

  it("tells express by a line besides the colour, and has every load in its table", () => {
    const drawing = furnaceQueue(view);
    const edges = shapesOf(drawing).filter(
      (shape) => shape.kind === "line" && shape.ink === "heat" && !shape.dash,
    );
    expect(edges).toHaveLength(1);
    expect(drawing.table.rows[1]).toEqual([
      ...[
        "FUR-01",
        "2026-03-10 08:00",
        "2026-03-10 20:00",
        "O-2026-0002, express",
        "3 sensors",
        "2026-03-12",
      ],
    ]);
  });

  it("stands with nothing planned", () => {
    expect(unsound(furnaceQueue({ now: view.now, furnaces: [] }))).toEqual([]);
  });
});
