import { Circle, G, Line, Path, Rect, Svg, Text } from "@react-pdf/renderer";
import { printInks } from "@/lib/drawing/print-inks";
import type { Drawing, Shape } from "@/lib/drawing/scene";
import { documentFont } from "../fonts";

/** fill: the ink inside; line: outline; both: outline with the ground inside. As in the page's own drawing parts. */
const paint = (shape: Extract<Shape, { mode: string }>) => ({
  fill: shape.mode === "line" ? "none" : shape.mode === "fill" ? printInks[shape.ink] : printInks.ground,
  stroke: shape.mode === "fill" ? "none" : printInks[shape.ink],
  strokeWidth: shape.mode === "fill" ? 0 : (shape.width ?? 1),
  opacity: shape.opacity ?? 1,
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
          stroke={printInks[shape.ink]}
          strokeWidth={shape.width ?? 1}
          opacity={shape.opacity ?? 1}
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

/** The same drawing as on the page, in the inks of paper. */
export const DrawingSvg = ({ drawing, width }: { readonly drawing: Drawing; readonly width: number }) => (
  <Svg
    viewBox={`0 0 ${drawing.width} ${drawing.height}`}
    width={width}
    height={(width * drawing.height) / drawing.width}
  >
    {drawing.shapes.map((shape, index) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no identity but their order
      <DrawnShape key={index} shape={shape} />
    ))}
  </Svg>
);
