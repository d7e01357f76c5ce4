import type { Shape } from "@/lib/drawing/scene";

const area = (shape: { readonly mode: "fill" | "line" | "both"; readonly ink: string }) =>
  `ink-${shape.ink} shape-${shape.mode}`;

/** One shape of a drawing as SVG; its ink becomes a class, its colour comes from the theme. */
export function DrawingShape({ shape }: { readonly shape: Shape }) {
  switch (shape.kind) {
    case "line":
      return (
        <line
          className={`ink-${shape.ink} shape-line`}
          x1={shape.x1}
          y1={shape.y1}
          x2={shape.x2}
          y2={shape.y2}
          strokeWidth={shape.width ?? 1}
          strokeDasharray={shape.dash}
          opacity={shape.opacity}
        />
      );
    case "path":
      return (
        <path
          className={area(shape)}
          d={shape.d}
          strokeWidth={shape.width}
          strokeDasharray={shape.dash}
          strokeLinejoin="round"
          opacity={shape.opacity}
        />
      );
    case "rect":
      return (
        <rect
          className={area(shape)}
          x={shape.x}
          y={shape.y}
          width={shape.w}
          height={shape.h}
          strokeWidth={shape.width}
          opacity={shape.opacity}
        />
      );
    case "circle":
      return (
        <circle
          className={area(shape)}
          cx={shape.x}
          cy={shape.y}
          r={shape.r}
          strokeWidth={shape.width}
          opacity={shape.opacity}
        />
      );
    case "text":
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
