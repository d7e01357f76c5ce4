import type { Shape, TextShape } from "@/lib/drawing/scene";

type Painted = Extract<Shape, { readonly width?: number }>;

/** An ink becomes a class, so that the theme gives it its colour. */
const paint = (shape: Painted) => ({
  className: `ink-${shape.ink} shape-${shape.kind === "line" ? "line" : shape.mode}`,
  strokeWidth: shape.width,
  strokeDasharray: shape.dash,
  opacity: shape.opacity,
});

function Words({ shape }: { readonly shape: TextShape }) {
  return (
    <text
      className={`ink-${shape.ink} shape-fill shape-text`}
      x={shape.x}
      y={shape.y}
      fontSize={shape.size}
      fontWeight={shape.bold ? 600 : 400}
      textAnchor={shape.anchor}
    >
      {shape.text}
    </text>
  );
}

/** One shape of a drawing as SVG. */
export function DrawingShape({ shape }: { readonly shape: Shape }) {
  switch (shape.kind) {
    case "line":
      return <line {...paint(shape)} x1={shape.x1} y1={shape.y1} x2={shape.x2} y2={shape.y2} />;
    case "path":
      return <path {...paint(shape)} d={shape.d} strokeLinejoin="round" />;
    case "rect":
      return <rect {...paint(shape)} x={shape.x} y={shape.y} width={shape.w} height={shape.h} />;
    case "circle":
      return <circle {...paint(shape)} cx={shape.x} cy={shape.y} r={shape.r} />;
    case "text":
      return <Words shape={shape} />;
    case "link":
      return (
        <a href={shape.href} aria-label={shape.label}>
          {shape.shapes.map((inner, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is made once and never reordered
            <DrawingShape key={`${inner.kind}${index}`} shape={inner} />
          ))}
        </a>
      );
  }
}
