import { type Box, type Frame, plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape, stroke } from "@/lib/drawing/scene";

export type DeviationPlotView = {
  readonly title: string;
  /** Unit of value, expanded and limit. */
  readonly unit: string;
  /** What the value is: "error" or "deviation". */
  readonly quantity: string;
  /** What the axes are called, in a document of another language; left out: in English, by quantity and unit. */
  readonly labels?: { readonly temperature: string; readonly value: string };
  readonly points: readonly {
    readonly nominalCelsius: number;
    readonly value: number;
    readonly expanded: number;
    /** As printed, for the table. */
    readonly printed: { readonly value: string; readonly expanded: string };
    /** The word of its conformity, if a statement is made. */
    readonly statement?: string;
  }[];
  /** ± limit over temperature; `null` where no tolerance is defined: the line ends there. */
  readonly tolerance?: readonly { readonly celsius: number; readonly limit: number | null }[];
};

type Placed = { readonly x: number; readonly low: number; readonly high: number; readonly y: number };

const band = (points: readonly Placed[]): string =>
  points.length < 2
    ? ""
    : `M${[
        ...points.map((point) => `${point.x},${point.high}`),
        ...[...points].reverse().map((point) => `${point.x},${point.low}`),
      ].join("L")}Z`;

function toleranceLines(
  tolerance: NonNullable<DeviationPlotView["tolerance"]>,
  x: (value: number) => number,
  y: (value: number) => number,
): readonly Shape[] {
  return [1, -1].map((sign) => {
    let pen = "M";
    let d = "";
    for (const { celsius, limit } of tolerance) {
      if (limit === null) pen = "M";
      else {
        d += `${pen}${px(x(celsius))},${px(y(sign * limit))}`;
        pen = "L";
      }
    }
    return { kind: "path", d, ink: "bad", mode: "line", width: 1.5, dash: "6 3" } as const;
  });
}

const bar = ({ x, y, low, high }: Placed): readonly Shape[] => [
  stroke([x, low], [x, high], "line-1", 1.5),
  stroke([x - 5, low], [x + 5, low], "line-1", 1.5),
  stroke([x - 5, high], [x + 5, high], "line-1", 1.5),
  { kind: "circle", x, y, r: 4, ink: "ink", mode: "fill" },
];

type Points = DeviationPlotView["points"];

/** Symmetric about zero, wide enough for every bar and the whole tolerance. */
function deviationFrame(view: DeviationPlotView, points: Points, box: Box, narrow: boolean): Frame {
  const celsius = points.map((point) => point.nominalCelsius);
  const low = Math.min(...celsius);
  const high = Math.max(...celsius);
  const air = Math.max((high - low) * 0.06, 10);
  const reach = Math.max(
    ...points.map((point) => Math.abs(point.value) + point.expanded),
    ...(view.tolerance ?? []).map((item) => item.limit ?? 0),
    1e-9,
  );
  const domain = points.length ? ([low - air, high + air] as const) : ([0, 1] as const);
  return plotFrame(
    box,
    { domain, label: view.labels?.temperature ?? "temperature, °C", ticks: narrow ? 4 : 7 },
    {
      domain: [-reach * 1.08, reach * 1.08],
      label: view.labels?.value ?? `${view.quantity}, ${view.unit}`,
      ticks: 6,
    },
  );
}

function deviationTable(view: DeviationPlotView, points: Points): Drawing["table"] {
  const stated = points.some((point) => point.statement !== undefined);
  const header = view.quantity.replace(/^./, (letter) => letter.toUpperCase());
  return {
    caption: view.title,
    columns: [
      { header: "Temperature", unit: "°C", align: "number" },
      { header, unit: view.unit, align: "number" },
      { header: "U", unit: view.unit, align: "number" },
      ...(stated ? [{ header: "Conformity" }] : []),
    ],
    rows: points.map((point) => [
      String(point.nominalCelsius),
      point.printed.value.replace(/^-/, "\u2212"),
      point.printed.expanded,
      ...(stated ? [point.statement ?? "no statement"] : []),
    ]),
  };
}

/** Values with their U, inside the tolerance if there is one. The band joins the ends of U; only the bars are stated. */
export function deviationPlot(view: DeviationPlotView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 250 : 300;
  const box = { left: 52, top: 30, right: width - 16, bottom: height - 42 };
  const points = [...view.points].sort((a, b) => a.nominalCelsius - b.nominalCelsius);
  const frame = deviationFrame(view, points, box, narrow);
  const placed = points.map((point) => ({
    x: px(frame.x(point.nominalCelsius)),
    y: px(frame.y(point.value)),
    low: px(frame.y(point.value - point.expanded)),
    high: px(frame.y(point.value + point.expanded)),
  }));
  const zero = px(frame.y(0));
  return {
    width,
    height,
    title: view.title,
    description:
      `${points.length} points with their expanded uncertainty` +
      `${view.tolerance ? "; dashed lines: the tolerance" : "; no tolerance"}.`,
    shapes: [
      ...frame.ground,
      { kind: "path", d: band(placed), ink: "line-1", mode: "fill", opacity: 0.14 },
      stroke([box.left, zero], [box.right, zero], "edge", 1.5),
      ...(view.tolerance ? toleranceLines(view.tolerance, frame.x, frame.y) : []),
      ...placed.flatMap(bar),
    ],
    table: deviationTable(view, points),
  };
}
