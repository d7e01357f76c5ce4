import { printInks } from "@/lib/drawing/print-inks";
import type { Drawing, Shape } from "@/lib/drawing/scene";
import { all, el, type Html } from "./html";

const paint = (shape: Extract<Shape, { mode: string }>) => ({
  fill: shape.mode === "line" ? "none" : shape.mode === "fill" ? printInks[shape.ink] : printInks.ground,
  stroke: shape.mode === "fill" ? undefined : printInks[shape.ink],
  "stroke-width": shape.mode === "fill" ? undefined : (shape.width ?? 1),
  "stroke-dasharray": shape.dash,
  opacity: shape.opacity,
});

const drawn = (shape: Shape): Html => {
  switch (shape.kind) {
    case "line":
      return el("line", {
        ...{ x1: shape.x1, y1: shape.y1, x2: shape.x2, y2: shape.y2 },
        ...{ stroke: printInks[shape.ink], "stroke-width": shape.width ?? 1, "stroke-dasharray": shape.dash },
        opacity: shape.opacity,
      });
    case "path":
      return shape.d === "" ? all() : el("path", { d: shape.d, ...paint(shape) });
    case "rect":
      return el("rect", { x: shape.x, y: shape.y, width: shape.w, height: shape.h, ...paint(shape) });
    case "circle":
      return el("circle", { cx: shape.x, cy: shape.y, r: shape.r, ...paint(shape) });
    case "text":
      return el(
        "text",
        {
          ...{ x: shape.x, y: shape.y, fill: printInks[shape.ink], "text-anchor": shape.anchor },
          ...{ "font-size": shape.size, "font-weight": shape.bold ? 600 : undefined },
        },
        shape.text,
      );
    case "link":
      return el("g", {}, shape.shapes.map(drawn));
  }
};

/** One picture for who sees it; its title and what there is to see for who does not. Its numbers stand in a table. */
export const figure = (drawing: Drawing, caption: Html, note: Html): Html =>
  el(
    "figure",
    {},
    el(
      "svg",
      {
        viewBox: `0 0 ${drawing.width} ${drawing.height}`,
        role: "img",
        "aria-label": `${drawing.title}. ${drawing.description}`,
      },
      drawing.shapes.map(drawn),
    ),
    el("figcaption", {}, caption, note),
  );
