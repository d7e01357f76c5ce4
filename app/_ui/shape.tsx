export type ShapeName =
  | "disc"
  | "half-disc"
  | "ring"
  | "dotted-ring"
  | "square"
  | "half-square"
  | "open-square"
  | "diamond"
  | "open-diamond"
  | "triangle"
  | "open-triangle"
  | "dash"
  | "bead";

const line = { fill: "none", stroke: "currentColor", strokeWidth: 2 } as const;
const solid = { fill: "currentColor" } as const;

const drawings: Readonly<Record<ShapeName, React.ReactNode>> = {
  disc: <circle cx={8} cy={8} r={7} {...solid} />,
  "half-disc": (
    <>
      <circle cx={8} cy={8} r={6} {...line} />
      <path d="M8 2a6 6 0 0 0 0 12z" {...solid} />
    </>
  ),
  ring: <circle cx={8} cy={8} r={6} {...line} />,
  "dotted-ring": <circle cx={8} cy={8} r={6} {...line} strokeDasharray="2.4 2.3" />,
  square: <path d="M1.5 1.5h13v13h-13z" {...solid} />,
  "half-square": (
    <>
      <path d="M2.5 2.5h11v11h-11z" {...line} />
      <path d="M2.5 2.5h5.5v11H2.5z" {...solid} />
    </>
  ),
  "open-square": <path d="M2.5 2.5h11v11h-11z" {...line} />,
  diamond: <path d="M8 .8 15.2 8 8 15.2.8 8z" {...solid} />,
  "open-diamond": <path d="M8 2 14 8 8 14 2 8z" {...line} />,
  triangle: <path d="M8 1 15.5 14.5H.5z" {...solid} />,
  "open-triangle": <path d="M8 3 14 13.5H2z" {...line} />,
  dash: <path d="M2 8h12" {...line} />,
  bead: (
    <>
      <circle cx={8} cy={8} r={3.5} {...solid} />
      <circle cx={8} cy={8} r={7} {...line} strokeWidth={1.5} />
    </>
  ),
};

/** One mark of the state alphabet. Decoration for a word that stands beside it, so hidden from screen readers. */
export function Shape({ name }: { readonly name: ShapeName }) {
  return (
    <svg viewBox="0 0 16 16" width={12} height={12} aria-hidden="true" focusable="false">
      {drawings[name]}
    </svg>
  );
}
