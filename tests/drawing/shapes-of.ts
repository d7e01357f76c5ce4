import type { Drawing, Shape } from "@/lib/drawing/scene";

/** Every shape of a drawing, those inside links too. */
export function shapesOf(drawing: Drawing): readonly Shape[] {
  const flat = (shape: Shape): readonly Shape[] =>
    shape.kind === "link" ? shape.shapes.flatMap(flat) : [shape];
  return drawing.shapes.flatMap(flat);
}

export const textsOf = (drawing: Drawing): readonly string[] =>
  shapesOf(drawing).flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));

/** Numbers that a renderer would choke on, by place. */
export function unsound(drawing: Drawing): readonly string[] {
  return shapesOf(drawing).flatMap((shape, index) =>
    Object.entries(shape)
      .filter(([, value]) =>
        typeof value === "number"
          ? !Number.isFinite(value)
          : typeof value === "string" && /NaN|Infinity|undefined/.test(value),
      )
      .map(([key]) => `${index} ${shape.kind} ${key}`),
  );
}
