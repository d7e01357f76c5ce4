import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape, stroke } from "@/lib/drawing/scene";

export type ProfilePlotView = {
  readonly title: string;
  /** What the zero of the vertical axis is: "against the mean of the length". */
  readonly against: string;
  readonly points: readonly {
    readonly millimetre: number;
    readonly celsius: number;
    readonly isInside: boolean;
  }[];
  /** U of a figure, °C: the band about the profile. */
  readonly expandedCelsius: number;
  /** The length the figure is stated over. */
  readonly fromMillimetre: number;
  readonly toMillimetre: number;
};

const signed = (value: number): string => (value < 0 ? "\u2212" : "+") + Math.abs(value).toFixed(3);

const joined = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y]) => `${x},${y}`).join("L");

/** The stated length behind, the band of U over it, the profile with its stops on top: open where outside of the length. */
function profileShapes(view: ProfilePlotView, at: (millimetre: number, celsius: number) => [number, number]) {
  const line = view.points.map(({ millimetre, celsius }) => at(millimetre, celsius));
  const edge = (sign: 1 | -1) =>
    view.points.map(({ millimetre, celsius }) => at(millimetre, celsius + sign * view.expandedCelsius));
  const shapes: Shape[] = [
    {
      kind: "path",
      d: `M${joined([...edge(1), ...edge(-1).toReversed()])}Z`,
      ink: "line-1",
      mode: "fill",
      opacity: 0.14,
    },
    { kind: "path", d: `M${joined(line)}`, ink: "line-1", mode: "line", width: 2 },
    ...view.points.map(({ isInside }, i): Shape => {
      const [x, y] = line[i] as [number, number];
      return { kind: "circle", x, y, r: 4, ink: "ink", mode: isInside ? "fill" : "both", width: 1.5 };
    }),
  ];
  return shapes;
}

/** A profile along the tube, or over depth: what a probe found at each stop, with the band of its U. */
export function profilePlot(view: ProfilePlotView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 240 : 280;
  const box = { left: 60, top: 30, right: width - 16, bottom: height - 42 };
  const depths = view.points.map(({ millimetre }) => millimetre);
  const values = view.points.flatMap(({ celsius }) => [
    celsius - view.expandedCelsius,
    celsius + view.expandedCelsius,
  ]);
  const frame = plotFrame(
    box,
    { domain: [Math.min(...depths), Math.max(...depths)], label: "depth, mm", ticks: narrow ? 4 : 8 },
    { domain: [Math.min(0, ...values), Math.max(0, ...values)], label: `°C ${view.against}`, ticks: 5 },
  );
  const at = (millimetre: number, celsius: number): [number, number] => [
    px(frame.x(millimetre)),
    px(frame.y(celsius)),
  ];
  const [left] = at(view.fromMillimetre, 0);
  const [right, zero] = at(view.toMillimetre, 0);
  return {
    width,
    height,
    title: view.title,
    description: `${view.points.length} stops from ${depths[0]} to ${depths.at(-1)} mm; the stated length from ${view.fromMillimetre} to ${view.toMillimetre} mm is shaded.`,
    shapes: [
      {
        kind: "rect",
        x: left,
        y: box.top,
        w: px(right - left),
        h: box.bottom - box.top,
        ink: "heat-wash",
        mode: "fill",
      },
      ...frame.ground,
      stroke([box.left, zero], [box.right, zero], "edge", 1.5),
      ...profileShapes(view, at),
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Depth", unit: "mm", align: "number" },
        { header: view.against, unit: "°C", align: "number" },
        { header: "In the stated length" },
      ],
      rows: view.points.map(({ millimetre, celsius, isInside }) => [
        String(millimetre),
        signed(celsius),
        isInside ? "yes" : "no",
      ]),
    },
  };
}
