import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape, stroke } from "@/lib/drawing/scene";

export type FunctionPlotView = {
  readonly title: string;
  readonly unit: string;
  readonly quantity: string;
  /** What the axes are called, in a document of another language; left out: in English, by quantity and unit. */
  readonly labels?: { readonly temperature: string; readonly value: string };
  /** Rising in temperature: the curve with its expanded uncertainty. */
  readonly curve: readonly { readonly celsius: number; readonly value: number; readonly expanded: number }[];
  readonly points: readonly {
    readonly celsius: number;
    readonly value: number;
    readonly fitted: number;
    readonly residual: number;
  }[];
};

type Placed = { readonly x: number; readonly y: number; readonly low: number; readonly high: number };

const joined = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y]) => `${x},${y}`).join("L");

/** Band first, curve over it, measured points on top. */
const shapesOf = (curve: readonly Placed[], points: readonly Pick<Placed, "x" | "y">[]): readonly Shape[] => {
  const upper = curve.map(({ x, high }) => [x, high] as const);
  const lower = curve.map(({ x, low }) => [x, low] as const).toReversed();
  return [
    { kind: "path", d: `M${joined([...upper, ...lower])}Z`, ink: "line-1", mode: "fill", opacity: 0.14 },
    {
      kind: "path",
      d: `M${joined(curve.map(({ x, y }) => [x, y] as const))}`,
      ink: "line-1",
      mode: "line",
      width: 2,
    },
    ...points.map(({ x, y }) => ({ kind: "circle", x, y, r: 4, ink: "ink", mode: "fill" }) as const),
  ];
};

const number = (value: number): string => value.toFixed(2).replace(/^-/, "\u2212");

/** A fitted function with its U as a band, and the measured points it was fitted to. */
export function functionPlot(view: FunctionPlotView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 250 : 300;
  const box = { left: 52, top: 30, right: width - 16, bottom: height - 42 };
  const celsius = view.curve.map((one) => one.celsius);
  const reach = Math.max(
    ...view.curve.map(({ value, expanded }) => Math.abs(value) + expanded),
    ...view.points.map(({ value }) => Math.abs(value)),
    1e-9,
  );
  const frame = plotFrame(
    box,
    {
      domain: [Math.min(...celsius), Math.max(...celsius)],
      label: view.labels?.temperature ?? "temperature, °C",
      ticks: narrow ? 4 : 7,
    },
    {
      domain: [-reach * 1.08, reach * 1.08],
      label: view.labels?.value ?? `${view.quantity}, ${view.unit}`,
      ticks: 6,
    },
  );
  const curve = view.curve.map((one) => ({
    x: px(frame.x(one.celsius)),
    y: px(frame.y(one.value)),
    low: px(frame.y(one.value - one.expanded)),
    high: px(frame.y(one.value + one.expanded)),
  }));
  const points = view.points.map((one) => ({ x: px(frame.x(one.celsius)), y: px(frame.y(one.value)) }));
  const zero = px(frame.y(0));
  return {
    width,
    height,
    title: view.title,
    description: `A curve through ${view.points.length} measured points, with a band for its expanded uncertainty.`,
    shapes: [
      ...frame.ground,
      stroke([box.left, zero], [box.right, zero], "edge", 1.5),
      ...shapesOf(curve, points),
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Temperature", unit: "°C", align: "number" },
        { header: "Measured", unit: view.unit, align: "number" },
        { header: "Function", unit: view.unit, align: "number" },
        { header: "Residual", unit: view.unit, align: "number" },
      ],
      rows: view.points.map((one) => [
        String(one.celsius),
        number(one.value),
        number(one.fitted),
        number(one.residual),
      ]),
    },
  };
}
