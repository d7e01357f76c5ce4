import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

export type CheckPlotView = {
  readonly title: string;
  readonly unit: string;
  readonly points: readonly {
    readonly on: string;
    readonly value: number;
    /** What still passes, each way. */
    readonly limit: number;
    readonly passed: boolean;
    /** Words of the rules it breaks; empty = none. */
    readonly broken: readonly string[];
  }[];
  readonly limits: {
    readonly centre: number;
    readonly warning: readonly [number, number];
    readonly action: readonly [number, number];
  } | null;
};

const signed = (value: number): string => (value < 0 ? "\u2212" : "+") + Math.abs(value).toPrecision(3);

/** Lines across: centre, ±2 s, ±3 s. */
const levels = (
  limits: NonNullable<CheckPlotView["limits"]>,
  at: (value: number) => number,
  { left, right }: { readonly left: number; readonly right: number },
): readonly Shape[] => [
  stroke([left, at(limits.centre)], [right, at(limits.centre)], "edge", 1.5),
  ...limits.warning.map((value) => stroke([left, at(value)], [right, at(value)], "watch", 1, "2 4")),
  ...limits.action.map((value) => stroke([left, at(value)], [right, at(value)], "bad", 1.5, "6 3")),
  note("3 s", right, px(at(limits.action[1]) - 4), "end", "bad"),
  note("2 s", right, px(at(limits.warning[1]) - 4), "end", "watch"),
];

/** Checks in the order of time against the limits of those before; a square is one that failed or breaks a rule. */
export function checkPlot(view: CheckPlotView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 240 : 280;
  const box = { left: 60, top: 30, right: width - 16, bottom: height - 42 };
  const { points, limits } = view;
  const reach = [
    ...points.map(({ value }) => value),
    ...(limits ? limits.action : points.flatMap(({ limit }) => [-limit, limit])),
  ];
  const frame = plotFrame(
    box,
    {
      domain: [0.5, points.length + 0.5],
      label: "check, in the order of time",
      ticks: Math.min(points.length, narrow ? 5 : 10),
    },
    { domain: [Math.min(...reach), Math.max(...reach)], label: `found − expected, ${view.unit}`, ticks: 5 },
  );
  const at = (index: number, value: number) => [px(frame.x(index + 1)), px(frame.y(value))] as const;
  const spots = points.map(({ value, passed, broken }, index): Shape => {
    const [x, y] = at(index, value);
    return passed && broken.length === 0
      ? { kind: "circle", x, y, r: 3.5, ink: "ink", mode: "fill" }
      : { kind: "rect", x: x - 5, y: y - 5, w: 10, h: 10, ink: "bad", mode: "fill" };
  });
  const line = points.map(({ value }, index) => at(index, value).join(",")).join("L");
  const odd = points.filter(({ passed, broken }) => !passed || broken.length > 0).length;
  return {
    width,
    height,
    title: view.title,
    description: `${points.length} checks; ${limits ? "limits at 2 s and 3 s of the checks before the last" : "no limits yet"}; ${odd === 0 ? "none stands out" : `${odd} marked by a square`}.`,
    shapes: [
      ...frame.ground,
      ...(limits ? levels(limits, (value) => px(frame.y(value)), box) : []),
      { kind: "path", d: `M${line}`, ink: "line-1", mode: "line", width: 1.5 },
      ...spots,
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Check", align: "number" },
        { header: "Day" },
        { header: "Found − expected", unit: view.unit, align: "number" },
        { header: "Allowed", unit: view.unit, align: "number" },
        { header: "Outcome" },
        { header: "Rules broken" },
      ],
      rows: points.map(({ on, value, limit, passed, broken }, index) => [
        String(index + 1),
        on,
        signed(value),
        `± ${limit}`,
        passed ? "passed" : "failed",
        broken.length === 0 ? "none" : broken.join(", "),
      ]),
    },
  };
}
