import { Circle, G, Line, Path, Rect, Svg, Text } from "@react-pdf/renderer";
import { printInks } from "@/lib/drawing/print-inks";
import type { Drawing, Ink, Shape } from "@/lib/drawing/scene";
import { documentFont } from "../fonts";
import { mixedInk } from "./mixed-ink";

/** Its ink as it looks on white paper, solid: a document that is archived has no transparency in it. */
const solid = ({ ink, opacity }: { readonly ink: Ink; readonly opacity?: number }): string =>
  opacity === undefined ? printInks[ink] : mixedInk(printInks[ink], opacity);

/** fill: the ink inside; line: outline; both: outline with the ground inside. As in the page's own drawing parts. */
const paint = (shape: Extract<Shape, { mode: string }>) => ({
  fill: shape.mode === "line" ? "none" : shape.mode === "fill" ? solid(shape) : printInks.ground,
  stroke: shape.mode === "fill" ? "none" : solid(shape),
  strokeWidth: shape.mode === "fill" ? 0 : (shape.width ?? 1),
  ...(shape.dash ? { strokeDasharray: shape.dash } : {}),
});

const DrawnShape = ({ shape }: { readonly shape: Shape }) => {
  switch (shape.kind) {
    case "line":
      return (
        <Line
          x1={shape.x1}
          y1={shape.y1}
          x2={shape.x2}
          y2={shape.y2}
          stroke={solid(shape)}
          strokeWidth={shape.width ?? 1}
          {...(shape.dash ? { strokeDasharray: shape.dash } : {})}
        />
      );
    case "path":
      return shape.d === "" ? null : <Path d={shape.d} {...paint(shape)} />;
    case "rect":
      return <Rect x={shape.x} y={shape.y} width={shape.w} height={shape.h} {...paint(shape)} />;
    case "circle":
      return <Circle cx={shape.x} cy={shape.y} r={shape.r} {...paint(shape)} />;
    case "text":
      return (
        <Text
          x={shape.x}
          y={shape.y}
          fill={printInks[shape.ink]}
          textAnchor={shape.anchor ?? "start"}
          style={{ fontFamily: documentFont(), fontSize: shape.size, fontWeight: shape.bold ? 600 : 400 }}
        >
          {shape.text}
        </Text>
      );
    case "link":
      return (
        <G>
          {shape.shapes.map((inner, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no identity but their order
            <DrawnShape key={index} shape={inner} />
          ))}
        </G>
      );
  }
};

/** A tint was seen through; solid, it must lie under what it would otherwise hide. */
const tintsFirst = (shapes: readonly Shape[]): readonly Shape[] => {
  const isTint = (shape: Shape): boolean =>
    "mode" in shape && shape.mode === "fill" && shape.opacity !== undefined;
  return [...shapes.filter(isTint), ...shapes.filter((shape) => !isTint(shape))];
};

/** The same drawing as on the page, in the inks of paper. */
export const DrawingSvg = ({ drawing, width }: { readonly drawing: Drawing; readonly width: number }) => (
  <Svg
    viewBox={`0 0 ${drawing.width} ${drawing.height}`}
    width={width}
    height={(width * drawing.height) / drawing.width}
  >
    {tintsFirst(drawing.shapes).map((shape, index) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no identity but their order
      <DrawnShape key={index} shape={shape} />
    ))}
  </Svg>
);
