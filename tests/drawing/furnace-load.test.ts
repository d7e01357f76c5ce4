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
});

it("has every place in its table, the shorted channel too", () => {
  expect(loadSection(view).table.rows.map((row) => row[3])).toEqual(["101", "102", "103", "104"]);
  expect(loadSection(view).table.rows[2]?.[4]).toBe("not given");
});
