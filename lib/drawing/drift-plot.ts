import { plotFrame } from "@/lib/drawing/plot-frame";
import { type Drawing, px, type Shape, stroke } from "@/lib/drawing/scene";

export type DriftPlotView = {
  readonly title: string;
  readonly against: "date" | "hours";
  readonly points: readonly {
    readonly certificate: string;
    readonly performedOn: string;
    readonly hours: number;
    readonly changeCelsius: number;
    readonly expandedCelsius: number;
  }[];
  /** Half-width of the drift in the equipment's record. */
  readonly allowedCelsius: number;
};

const yearOf = (day: string): number => {
  const year = Number(day.slice(0, 4));
  const begin = Date.UTC(year, 0, 1);
  return year + (Date.parse(`${day}T00:00:00Z`) - begin) / (Date.UTC(year + 1, 0, 1) - begin);
};

/** 2026.25 → 2026-04: a tick stands at the beginning of its month or within it. */
const monthOf = (year: number): string => {
  const whole = Math.floor(year + 1e-9);
  return `${whole}-${String(Math.floor((year - whole + 1e-9) * 12) + 1).padStart(2, "0")}`;
};

const signed = (value: number): string => (value < 0 ? "\u2212" : "+") + Math.abs(value).toFixed(3);

const bar = ([x, y]: readonly [number, number], low: number, high: number): readonly Shape[] => [
  stroke([x, low], [x, high], "line-1", 1.5),
  stroke([x - 5, low], [x + 5, low], "line-1", 1.5),
  stroke([x - 5, high], [x + 5, high], "line-1", 1.5),
  { kind: "circle", x, y, r: 4, ink: "ink", mode: "fill" },
];

/** How a reference has changed from calibration to calibration, each with its U; dashed: the drift its budgets allow, about the last. */
export function driftPlot(view: DriftPlotView, width = 640): Drawing {
  const narrow = width < 500;
  const height = narrow ? 240 : 280;
  const box = { left: 60, top: 30, right: width - 16, bottom: height - 42 };
  const { points, allowedCelsius, against } = view;
  const last = points.at(-1)?.changeCelsius ?? 0;
  const across = points.map(({ performedOn, hours }) => (against === "date" ? yearOf(performedOn) : hours));
  const edges = points.flatMap(({ changeCelsius, expandedCelsius }) => [
    changeCelsius - expandedCelsius,
    changeCelsius + expandedCelsius,
  ]);
  const allowed = [last - allowedCelsius, last + allowedCelsius];
  const frame = plotFrame(
    box,
    {
      domain: [Math.min(...across), Math.max(...across)],
      label: against === "date" ? "year and month" : "hours above 1000 °C",
      ticks: narrow ? 2 : 5,
      ...(against === "date" ? { write: monthOf } : {}),
    },
    {
      domain: [Math.min(...edges, ...allowed), Math.max(...edges, ...allowed)],
      label: "change since the first, °C",
      ticks: 5,
    },
  );
  const y = (value: number) => px(frame.y(value));
  const spots = points.map(
    ({ changeCelsius }, i) => [px(frame.x(across[i] as number)), y(changeCelsius)] as const,
  );
  return {
    width,
    height,
    title: view.title,
    description: `${points.length} calibrations with their expanded uncertainty; dashed: ± ${allowedCelsius} °C about the last, the drift its budgets allow.`,
    shapes: [
      ...frame.ground,
      ...allowed.map((value) => stroke([box.left, y(value)], [box.right, y(value)], "bad", 1.5, "6 3")),
      {
        kind: "path",
        d: `M${spots.map((spot) => spot.join(",")).join("L")}`,
        ink: "line-1",
        mode: "line",
        width: 1.5,
      },
      ...points.flatMap(({ changeCelsius, expandedCelsius }, i) =>
        bar(
          spots[i] as readonly [number, number],
          y(changeCelsius - expandedCelsius),
          y(changeCelsius + expandedCelsius),
        ),
      ),
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Certificate" },
        { header: "Performed" },
        { header: "Hours above 1000 °C", unit: "h", align: "number" },
        { header: "Change since the first", unit: "°C", align: "number" },
        { header: "U", unit: "°C", align: "number" },
      ],
      rows: points.map(({ certificate, performedOn, hours, changeCelsius, expandedCelsius }) => [
        certificate,
        performedOn,
        hours.toFixed(1),
        signed(changeCelsius),
        expandedCelsius.toFixed(2),
      ]),
    },
  };
}
