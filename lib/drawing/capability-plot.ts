import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, note, px, type Shape } from "@/lib/drawing/scene";

export type CapabilityPlotView = {
  readonly title: string;
  /** One per line of the scope, ascending; `points` follow its capability from end to end. */
  readonly lines: readonly {
    readonly points: readonly { readonly celsius: number; readonly expandedCelsius: number }[];
  }[];
  /** What stands in the table: the ends and the temperatures between that somebody asks for. */
  readonly rows: readonly {
    readonly celsius: string;
    readonly expandedCelsius: string;
    readonly source: string;
  }[];
};

/** Capability over temperature: a line for each line of the scope, with its ends marked; between them there is no scope. */
export function capabilityPlot(view: CapabilityPlotView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 220 : 250;
  const box = { left: 52, top: 30, right: width - 16, bottom: height - 42 };
  const points = view.lines.flatMap((line) => line.points);
  const celsius = points.map((point) => point.celsius);
  const frame = plotFrame(
    box,
    {
      domain: [Math.min(...celsius), Math.max(...celsius)],
      label: "temperature, °C",
      ticks: narrow ? 4 : 7,
      nice: true,
    },
    {
      domain: [0, Math.max(...points.map((point) => point.expandedCelsius)) * 1.1],
      label: "U, °C",
      ticks: 5,
    },
  );
  const shapes = view.lines.flatMap(({ points: along }): Shape[] => {
    const at = along.map(
      (point) => [px(frame.x(point.celsius)), px(frame.y(point.expandedCelsius))] as const,
    );
    const ends = [at[0], at.at(-1)].flatMap((end) => (end ? [end] : []));
    return [
      {
        kind: "path",
        d: `M${at.map(([x, y]) => `${x},${y}`).join("L")}`,
        ink: "line-1",
        mode: "line",
        width: 2,
      },
      ...ends.map(([x, y]): Shape => ({ kind: "circle", x, y, r: 4, ink: "ink", mode: "fill" })),
    ];
  });
  return {
    width,
    height,
    title: view.title,
    description: `${view.lines.length} ${view.lines.length === 1 ? "line" : "lines"} of the scope; no smaller U is reported. Outside the lines there is no scope.`,
    shapes: [
      ...frame.ground,
      ...shapes,
      ...(points.length === 0 ? [note("no line", box.left, box.bottom)] : []),
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Temperature", unit: "°C", align: "number" },
        { header: "Capability U", unit: "°C", align: "number" },
        { header: "Source" },
      ],
      rows: view.rows.map((row) => [row.celsius, row.expandedCelsius, row.source]),
    },
  };
}
