import type { BoreView } from "@/lib/drawing/load-view";
import { type Drawing, note, px, type Shape } from "@/lib/drawing/scene";

export type PositionsMapView = {
  readonly title: string;
  /** The first is the centre, the others are told against it. */
  readonly places: readonly {
    readonly place: string;
    readonly celsius: number;
    readonly expandedCelsius: number;
  }[];
  /** Of a block: where the numbered bores are. */
  readonly bores: readonly BoreView[];
  readonly boreMillimetre: number;
};

const signed = (value: number, digits: number): string =>
  (value < 0 ? "\u2212" : "+") + Math.abs(value).toFixed(digits);

type Spot = { readonly x: number; readonly y: number; readonly r: number };

/**
 * Where each position stands in the picture: in its bore to scale, or else the centre in the middle and the others round it.
 * Angles use Math.sin and cos: a drawing may differ in its last bit between engines and is rounded to 0.01 px.
 */
function spotsOf(view: PositionsMapView, radius: number): { spots: readonly Spot[]; isToScale: boolean } {
  const scale = (2 * radius) / view.boreMillimetre;
  const bored = view.places.map(({ place }) => view.bores.find(({ number }) => number === place));
  if (bored.every((bore) => bore !== undefined))
    return {
      isToScale: true,
      spots: bored.map(({ xMillimetre, yMillimetre, diameterMillimetre }) => ({
        x: xMillimetre * scale,
        y: yMillimetre * scale,
        r: (diameterMillimetre * scale) / 2,
      })),
    };
  const others = view.places.length - 1;
  const spots = view.places.map((_, i): Spot => {
    if (i === 0) return { x: 0, y: 0, r: radius * 0.16 };
    const angle = (2 * Math.PI * (i - 1)) / others - Math.PI / 2;
    return { x: Math.cos(angle) * radius * 0.66, y: Math.sin(angle) * radius * 0.66, r: radius * 0.16 };
  });
  return { isToScale: false, spots };
}

/** The positions seen from the mouth of the tube: each with its name and its difference from the centre. */
export function positionsMap(view: PositionsMapView, width = 420): Drawing {
  const radius = px(Math.min(150, width * 0.36));
  const height = px(2 * radius + 40);
  const [cx, cy] = [px(width / 2), px(height / 2)];
  const { spots, isToScale } = spotsOf(view, radius);
  return {
    width,
    height,
    title: view.title,
    description: `${isToScale ? "Bores to scale" : "Order, not scale"}, seen from the mouth of the tube. ${view.places
      .map(({ place, celsius }) => `${place}: ${signed(celsius, 2)} °C`)
      .join("; ")}.`,
    shapes: [
      { kind: "circle", x: cx, y: cy, r: radius, ink: "sunken", mode: "fill" },
      { kind: "circle", x: cx, y: cy, r: radius, ink: "heat", mode: "line", width: 1.5 },
      ...view.places.flatMap(({ place, celsius }, i): Shape[] => {
        const spot = spots[i] as Spot;
        const [x, y] = [px(cx + spot.x), px(cy + spot.y)];
        return [
          { kind: "circle", x, y, r: px(spot.r), ink: "ink", mode: "both", width: i === 0 ? 2.5 : 1.5 },
          note(place, x, px(y - spot.r - 4), "middle"),
          note(i === 0 ? "0" : signed(celsius, 2), x, px(y + 4), "middle", "ink"),
        ];
      }),
    ],
    table: {
      caption: view.title,
      columns: [
        { header: "Position" },
        { header: "Against the centre", unit: "°C", align: "number" },
        { header: "U (k = 2)", unit: "°C", align: "number" },
      ],
      rows: view.places.map(({ place, celsius, expandedCelsius }, i) => [
        place,
        i === 0 ? "centre" : signed(celsius, 3),
        i === 0 ? "" : expandedCelsius.toFixed(3),
      ]),
    },
  };
}
