import { expect, it } from "vitest";
import { loadImmersion } from "@/lib/drawing/load-immersion";
import { loadSection } from "@/lib/drawing/load-section";
import type { LoadView } from "@/lib/drawing/load-view";
import { shapesOf, textsOf } from "./shapes-of";

const view: LoadView = {
  title: "Load",
  configuration: "equalising-block",
  places: [
    { place: "1", kind: "reference", label: "REF-1", type: "S", channel: "101", immersionMillimetre: 420 },
    { place: "2", kind: "sensor", label: "KX-1", type: "K", channel: "102", immersionMillimetre: 210 },
    { place: "3", kind: "sensor", label: "NX-1", type: "N", channel: "103" },
    { place: "-", kind: "shorted", label: "zero", channel: "104" },
  ],
};

it("gives each thing in the tube its own place, equally far apart, and the shorted channel none", () => {
  const drawing = loadSection(view);
  const cores = shapesOf(drawing).flatMap((shape) =>
    shape.kind === "circle" && shape.ink.startsWith("type-") ? [shape] : [],
  );
  expect(cores.map((core) => core.ink)).toEqual(["type-s", "type-k", "type-n"]);
  const gap = (a: number, b: number) =>
    Math.hypot((cores[a]?.x ?? 0) - (cores[b]?.x ?? 0), (cores[a]?.y ?? 0) - (cores[b]?.y ?? 0));
  expect(gap(0, 1)).toBeCloseTo(gap(1, 2), 1);
  expect(gap(0, 1)).toBeCloseTo(gap(2, 0), 1);
  expect(textsOf(drawing)).not.toContain("zero");
});

it("tells a reference by a second ring", () => {
  const rings = (of: LoadView) =>
    shapesOf(loadSection(of)).filter((shape) => shape.kind === "circle" && shape.ink === "ink").length;
  const without: LoadView = {
    ...view,
    places: view.places.map((place) => (place.kind === "reference" ? { ...place, kind: "sensor" } : place)),
  };
  expect(rings(view)).toBe(rings(without) + 1);
});

it("draws depth in proportion from the mouth, and an unknown depth as unknown", () => {
  const drawing = loadImmersion(view, 480);
  const tips = shapesOf(drawing).flatMap((shape) =>
    shape.kind === "circle" && shape.ink.startsWith("type-") ? [shape.x] : [],
  );
  const mouth = shapesOf(drawing).flatMap((shape) => (shape.kind === "rect" ? [shape.x] : []))[0] ?? 0;
  expect(((tips[1] ?? 0) - mouth) / ((tips[0] ?? 0) - mouth)).toBeCloseTo(0.5, 3);
  expect(textsOf(drawing)).toContain("not given");
  expect(textsOf(loadImmersion({ ...view, bestImmersionMillimetre: 400 }))).toContain(
    "most uniform at 400 mm",
  );
});

const block: LoadView = {
  ...view,
  boreMillimetre: 50,
  bores: [
    { number: "1", diameterMillimetre: 8, xMillimetre: 0, yMillimetre: 0 },
    { number: "2", diameterMillimetre: 8, xMillimetre: 15, yMillimetre: 0 },
    { number: "5", diameterMillimetre: 8, xMillimetre: 0, yMillimetre: -15 },
  ],
};

it("draws a block to scale, each thing in the bore it names, an empty bore with its number", () => {
  const drawing = loadSection(block, 420);
  const core = (ink: string) =>
    shapesOf(drawing).find((shape) => shape.kind === "circle" && shape.ink === ink) as {
      x: number;
      y: number;
    };
  const radius = 420 * 0.19;
  expect(core("type-k").x - core("type-s").x).toBeCloseTo((15 / 25) * radius, 1);
  expect(core("type-k").y).toBeCloseTo(core("type-s").y, 1);
  expect(textsOf(drawing)).toContain("5");
  expect(drawing.description).toContain("in no bore: NX-1");
});

it("writes channel and junction beside each thing", () => {
  const wired = { ...view, places: view.places.map((place) => ({ ...place, junction: "ICE-1" })) };
  expect(textsOf(loadSection(wired, 480)).join(" ")).toContain("K · ch 102 · ICE-1");
  expect(loadSection(wired).table.rows[1]?.[4]).toBe("ICE-1");
});

it("ties a bundle round its reference", () => {
  const bundle: LoadView = { ...view, configuration: "bare-tube" };
  const cores = shapesOf(loadSection(bundle)).flatMap((shape) =>
    shape.kind === "circle" && shape.ink.startsWith("type-") ? [shape] : [],
  );
  const reference = cores.find(({ ink }) => ink === "type-s");
  expect(reference?.x).toBeCloseTo(210, 1);
  const far = cores
    .filter(({ ink }) => ink !== "type-s")
    .map((core) => Math.hypot(core.x - 210, core.y - (reference?.y ?? 0)));
  expect(far[0]).toBeCloseTo(far[1] ?? 0, 1);
  expect(far[0]).toBeGreaterThan(20);
});

it("leaves every label its own line, at 40 things too", () => {
  const places = Array.from({ length: 40 }, (_, index) => ({
    place: `${index + 1}`,
    kind: "sensor" as const,
    label: `KX-${index + 1}`,
    type: "K",
    channel: `${101 + index}`,
  }));
  for (const configuration of ["bare-tube", "equalising-block"] as const) {
    const names = shapesOf(loadSection({ title: "Load", configuration, places }, 420)).flatMap((shape) =>
      shape.kind === "text" && shape.text.includes("KX") ? [shape] : [],
    );
    expect(names).toHaveLength(40);
    for (const side of ["start", "end"] as const) {
      const heights = names
        .filter(({ anchor }) => anchor === side)
        .map(({ y }) => y)
        .sort((a, b) => a - b);
      for (const [index, y] of heights.entries())
        expect(y - (heights[index - 1] ?? -100)).toBeGreaterThan(26);
    }
  }
});

it("leads from each thing to its row where the page has one", () => {
  const linked = { ...view, places: view.places.map((place) => ({ ...place, href: `#${place.channel}` })) };
  const links = loadSection(linked).shapes.flatMap((shape) => (shape.kind === "link" ? [shape.href] : []));
  expect(links.toSorted()).toEqual(["#101", "#102", "#103"]);
});

it("marks the depth of best uniformity to the scale of the tube's length", () => {
  const drawing = loadImmersion({ ...view, lengthMillimetre: 1000, bestImmersionMillimetre: 420 }, 480);
  const line = shapesOf(drawing).find((shape) => shape.kind === "line" && shape.dash === "5 4");
  const tip = shapesOf(drawing).find((shape) => shape.kind === "circle" && shape.ink === "type-s");
  expect(line?.kind === "line" && line.x1).toBe(tip?.kind === "circle" && tip.x);
  expect(textsOf(drawing)).toContain("1000");
});

it("has every place in its table, the shorted channel too", () => {
  expect(loadSection(view).table.rows.map((row) => row[3])).toEqual(["101", "102", "103", "104"]);
  expect(loadSection(view).table.rows[2]?.[5]).toBe("not given");
});
