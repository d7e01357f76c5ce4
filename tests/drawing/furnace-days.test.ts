import { expect, it } from "vitest";
import { type FurnaceDaysView, furnaceDays } from "@/lib/drawing/furnace-days";

const view: FurnaceDaysView = {
  title: "Furnaces",
  from: "2026-03-04T00:00:00Z",
  until: "2026-03-14T00:00:00Z",
  now: "2026-03-04T12:00:00Z",
  furnaces: [
    {
      tag: "FUR-01",
      hot: { number: "R-2026-0004" },
      bars: [
        {
          label: "O-2026-0001",
          detail: "O-2026-0001, Oakes",
          href: "/orders/O-2026-0001",
          startsAt: "2026-03-03T08:00:00Z",
          endsAt: "2026-03-05T00:00:00Z",
        },
        {
          label: "Maintenance",
          detail: "",
          href: "/furnaces/1",
          startsAt: "2026-03-13T12:00:00Z",
          endsAt: "2026-03-20T00:00:00Z",
        },
      ],
    },
    { tag: "FUR-02", hot: null, bars: [] },
  ],
};

const bars = (width: number) =>
  furnaceDays(view, width).shapes.flatMap((shape) => {
    const [box] = shape.kind === "link" ? shape.shapes : [];
    return shape.kind === "link" && box?.kind === "rect" ? [{ href: shape.href, x: box.x, w: box.w }] : [];
  });

it("draws what a furnace is taken for in its days, cut where the picture ends", () => {
  for (const width of [1200, 360]) {
    const [first, last] = bars(width);
    const left = width === 1200 ? 144 : 66;
    const right = width - (width === 1200 ? 8 : 6);
    const day = (right - left) / 10;
    expect(first).toMatchObject({ href: "/orders/O-2026-0001", x: left + 1 });
    expect(first!.w).toBeCloseTo(day - 2, 1);
    expect(last!.x).toBeCloseTo(left + 9.5 * day + 1, 1);
    expect(last!.x + last!.w).toBeLessThanOrEqual(right);
  }
});

it("writes into a bar only what the link's name says whole", () => {
  const written = [1200, 360].flatMap((width) =>
    furnaceDays(view, width).shapes.flatMap((shape) =>
      shape.kind === "link"
        ? shape.shapes.flatMap((inner) => (inner.kind === "text" ? [[shape.label, inner.text] as const] : []))
        : [],
    ),
  );
  expect(written.length).toBeGreaterThan(0);
  for (const [label, text] of written) expect(label).toContain(text);
});

it("says in its table what is drawn, with whole times", () => {
  const { table, description } = furnaceDays(view);
  expect(table.rows).toEqual([
    ["FUR-01", "2026-03-03 08:00", "2026-03-05 00:00", "O-2026-0001", "O-2026-0001, Oakes"],
    ["FUR-01", "2026-03-13 12:00", "2026-03-20 00:00", "Maintenance", ""],
  ]);
  expect(description).toBe("2 furnaces, 1 hot now, taken 2 times in these days.");
});

it("names the days, greys Saturday and Sunday, and marks now", () => {
  const { shapes } = furnaceDays(view);
  const texts = shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
  expect(texts).toEqual(expect.arrayContaining(["Wed 4", "Sun 8", "Fri 13", "hot: R-2026-0004", "not hot"]));
  expect(shapes.filter((shape) => shape.kind === "rect" && shape.ink === "sunken")).toHaveLength(2);
  const now = shapes.find((shape) => shape.kind === "line" && shape.ink === "bad");
  expect(now).toMatchObject({ x1: 144 + (1048 / 10) * 0.5 });
});
