import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape, stroke } from "@/lib/drawing/scene";

export type HistoryPlotView = {
  /** "600 °C" */
  readonly setpoint: string;
  readonly points: readonly {
    readonly certificate: string;
    /** YYYY-MM-DD */
    readonly performedOn: string;
    readonly error: string;
    readonly expanded: string;
    readonly errorCelsius: number;
    readonly expandedCelsius: number;
  }[];
};

const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;
const monthOf = (days: number): string => new Date(Math.round(days) * 86_400_000).toISOString().slice(0, 7);

/** One certificate alone has no width: it stands within half a year to each side. */
const across = (days: readonly number[]): readonly [number, number] => {
  const [low, high] = [Math.min(...days), Math.max(...days)];
  return high - low < 60 ? [low - 180, high + 180] : [low, high];
};

const bar = (x: number, y: number, low: number, high: number): readonly Shape[] => [
  stroke([x, low], [x, high], "line-1", 1.5),
  stroke([x - 5, low], [x + 5, low], "line-1", 1.5),
  stroke([x - 5, high], [x + 5, high], "line-1", 1.5),
  { kind: "circle", x, y, r: 4, ink: "ink", mode: "fill" },
];

/** The error at one setpoint from certificate to certificate, each with its U, and the band the U span. */
export function historyPlot(view: HistoryPlotView, width = 640): Drawing {
  const height = width < 500 ? 220 : 240;
  const box = { left: 60, top: 30, right: width - 24, bottom: height - 42 };
  const points = view.points.map((point) => ({
    ...point,
    at: dayNumber(point.performedOn),
    low: point.errorCelsius - point.expandedCelsius,
    high: point.errorCelsius + point.expandedCelsius,
  }));
  const frame = plotFrame(
    box,
    {
      domain: across(points.map(({ at }) => at)),
      label: "year and month",
      ticks: width < 500 ? 2 : 5,
      write: monthOf,
    },
    {
      domain: [Math.min(0, ...points.map(({ low }) => low)), Math.max(0, ...points.map(({ high }) => high))],
      label: "error, °C",
      ticks: 5,
    },
  );
  const spot = ({ at }: { readonly at: number }, value: number) => `${px(frame.x(at))},${px(frame.y(value))}`;
  const edge = [
    ...points.map((point) => spot(point, point.high)),
    ...points.toReversed().map((point) => spot(point, point.low)),
  ];
  const title = `Error at ${view.setpoint} over the years`;
  return {
    width,
    height,
    title,
    description: `${points.length} ${points.length === 1 ? "certificate" : "certificates"}, each with its expanded uncertainty; the band joins them.`,
    shapes: [
      ...frame.ground,
      { kind: "path", d: `M${edge.join("L")}Z`, ink: "line-1", mode: "fill", opacity: 0.12 },
      stroke([box.left, px(frame.y(0))], [box.right, px(frame.y(0))], "edge", 1, "2 3"),
      {
        kind: "path",
        d: `M${points.map((point) => spot(point, point.errorCelsius)).join("L")}`,
        ...{ ink: "line-1", mode: "line", width: 1.5 },
      },
      ...points.flatMap(({ at, errorCelsius, low, high }) =>
        bar(px(frame.x(at)), px(frame.y(errorCelsius)), px(frame.y(low)), px(frame.y(high))),
      ),
    ],
    table: {
      caption: title,
      columns: [
        { header: "Certificate" },
        { header: "Measured" },
        { header: "Error", unit: "°C", align: "number" },
        { header: "U", unit: "°C", align: "number" },
      ],
      rows: points.map(({ certificate, performedOn, error, expanded }) => [
        ...[certificate, performedOn, error, expanded],
      ]),
    },
  };
}
