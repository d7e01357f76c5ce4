import { expect, it } from "vitest";
import type { FurnaceBoard } from "@/lib/data/board/load-furnaces";
import { type FurnaceDaysView, furnaceDays } from "@/lib/drawing/furnace-days";
import { furnaceRows } from "@/lib/views/board/furnace-rows";

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
          detail: "reserved for O-2026-0001, Oakes; overlaps R-2026-0004: at risk",
          ...{ kind: "reserved", isOverlapping: true },
          href: "/orders/O-2026-0001",
          startsAt: "2026-03-03T08:00:00Z",
          endsAt: "2026-03-05T00:00:00Z",
        },
        {
          label: "Maintenance",
          detail: "reserved",
          ...{ kind: "reserved", isOverlapping: false },
          href: "/furnaces/1",
          startsAt: "2026-03-13T12:00:00Z",
          endsAt: "2026-03-20T00:00:00Z",
        },
        {
          label: "R-2026-0004",
          detail: "hot, 2 sensors",
          ...{ kind: "hot", isOverlapping: true },
          href: "/runs/R-2026-0004",
          startsAt: "2026-03-04T08:00:00Z",
          endsAt: "2026-03-04T20:00:00Z",
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

it("fills what runs, outlines what is reserved, and draws both where they overlap", () => {
  for (const width of [1200, 360]) {
    const drawn = furnaceDays(view, width).shapes.flatMap((shape) =>
      shape.kind === "link" ? [shape.shapes.flatMap((box) => (box.kind === "rect" ? [box] : []))] : [],
    );
    expect(drawn.map((boxes) => boxes.map(({ mode }) => mode))).toEqual([
      ["line"],
      ["line"],
      ["fill", "line"],
    ]);
    const [reserved, , hot] = drawn.map(([box]) => box!);
    expect(reserved!.dash).toBeDefined();
    expect(hot!.y + hot!.h).toBeLessThanOrEqual(reserved!.y);
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
    [
      ...["FUR-01", "2026-03-03 08:00", "2026-03-05 00:00", "O-2026-0001"],
      "reserved for O-2026-0001, Oakes; overlaps R-2026-0004: at risk",
    ],
    ["FUR-01", "2026-03-13 12:00", "2026-03-20 00:00", "Maintenance", "reserved"],
    ["FUR-01", "2026-03-04 08:00", "2026-03-04 20:00", "R-2026-0004", "hot, 2 sensors"],
  ]);
  expect(description).toBe("2 furnaces, 1 hot now, taken 3 times in these days.");
});

it("names the days, greys Saturday and Sunday, and marks now", () => {
  const { shapes } = furnaceDays(view);
  const texts = shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
  expect(texts).toEqual(expect.arrayContaining(["Wed 4", "Sun 8", "Fri 13", "hot: R-2026-0004", "not hot"]));
  expect(shapes.filter((shape) => shape.kind === "rect" && shape.ink === "sunken")).toHaveLength(2);
  const now = shapes.find((shape) => shape.kind === "line" && shape.ink === "bad");
  expect(now).toMatchObject({ x1: 144 + (1048 / 10) * 0.5 });
});

it("shows what is hot from when it began, never after now, and says which reservation it overlaps", () => {
  const at = (hour: string) => Date.parse(`2026-03-04T${hour}:00Z`);
  const hours = { furnaceId: "f", startsAt: at("13:00"), endsAt: at("20:00") };
  const slot = { order: "O-1", customer: "Oakes", note: "", ...hours, endsAt: at("15:00") };
  const later = { ...slot, order: "O-2", startsAt: at("20:00"), endsAt: at("23:00") };
  const barsOf = (hotBy: Date | null) => {
    const work = { kind: "characterisation", id: "c", number: "CH-1", furnaceId: "f", isMeasuring: true };
    const placed = [{ hours, work: { ...work, highestCelsius: 700, sensors: 0, hotBy } }];
    const furnace = { id: "f", tag: "F", name: "", placed, reserved: [slot, later] };
    const days = { from: new Date(view.from), now: new Date(view.now), until: new Date(view.until) };
    return furnaceRows([furnace] as unknown as FurnaceBoard, days)[0]!.bars;
  };
  const [hot, first, second] = barsOf(new Date(at("10:05")));
  expect(hot).toMatchObject({ kind: "hot", startsAt: "2026-03-04T10:05:00.000Z", isOverlapping: true });
  expect(first).toMatchObject({
    ...{ kind: "reserved", isOverlapping: true },
    detail: "reserved for O-1, Oakes; overlaps CH-1: at risk",
  });
  expect(second).toMatchObject({ isOverlapping: false, detail: "reserved for O-2, Oakes" });
  expect(barsOf(null)[0]!.startsAt).toBe("2026-03-04T00:00:00.000Z");
  expect(barsOf(new Date(at("18:00")))[0]!.startsAt).toBe("2026-03-04T12:00:00.000Z");
});
