/**
 * A drawing as plain data: shapes with the name of an ink, never a colour, so that the page (light, dark) and the PDF
 * draw the same picture each with its own colours. Lengths are in px of the drawing's own box.
 */
export type Ink =
  | "ink"
  | "muted"
  | "faint"
  | "edge"
  | "ground"
  | "surface"
  | "sunken"
  | "heat"
  | "heat-wash"
  | "good"
  | "watch"
  | "bad"
  | "line-1"
  | "line-2"
  | "line-3"
  | "line-4"
  | "line-5"
  | "line-6"
  | "type-k"
  | "type-n"
  | "type-r"
  | "type-s";

type Stroke = {
  readonly ink: Ink;
  readonly width?: number;
  readonly dash?: string;
  readonly opacity?: number;
};

/** fill: the ink inside; line: the ink as outline; both: outline in the ink, ground inside. */
type Area = Stroke & { readonly mode: "fill" | "line" | "both" };

export type TextShape = {
  readonly kind: "text";
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly ink: Ink;
  readonly size: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly bold?: boolean;
};

export type Shape =
  | (Stroke & {
      readonly kind: "line";
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
    })
  | (Area & { readonly kind: "path"; readonly d: string })
  | (Area & {
      readonly kind: "rect";
      readonly x: number;
      readonly y: number;
      readonly w: number;
      readonly h: number;
    })
  | (Area & { readonly kind: "circle"; readonly x: number; readonly y: number; readonly r: number })
  | TextShape
  | {
      readonly kind: "link";
      readonly href: string;
      readonly label: string;
      readonly shapes: readonly Shape[];
    };

export type DrawingTable = {
  readonly caption: string;
  readonly columns: readonly {
    readonly header: string;
    readonly unit?: string;
    readonly align?: "number" | "text";
  }[];
  readonly rows: readonly (readonly string[])[];
};

export type Drawing = {
  readonly width: number;
  readonly height: number;
  /** What is drawn, in one line; also the text alternative. */
  readonly title: string;
  /** What there is to see in it, for those who do not see it. */
  readonly description: string;
  readonly shapes: readonly Shape[];
  /** The same numbers as rows. */
  readonly table: DrawingTable;
};

/** Two decimals of a px are enough, and keep the same bytes on each machine. */
export const px = (value: number): number => {
  const rounded = Math.round(value * 100) / 100;
  return rounded === 0 ? 0 : rounded;
};

/** Text in the second ink, the size of labels: the commonest shape of all. */
export const note = (
  text: string,
  x: number,
  y: number,
  anchor?: TextShape["anchor"],
  ink: Ink = "muted",
): TextShape => ({ kind: "text", x, y, text, ink, size: 12, anchor });

/** A straight line. */
export const stroke = (
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  ink: Ink,
  width = 1,
  dash?: string,
): Shape => ({ kind: "line", x1, y1, x2, y2, ink, width, dash });
