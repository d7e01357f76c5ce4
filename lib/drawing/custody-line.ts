import { fitText } from "@/lib/drawing/fit-text";
import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

export type CustodyLineView = {
  readonly title: string;
  /** In the order of the log. */
  readonly steps: readonly {
    readonly label: string;
    /** YYYY-MM-DD */
    readonly day: string;
    /** ISO 8601 */
    readonly at: string;
    readonly from: string;
    readonly to: string;
    readonly condition: string;
    readonly by: string;
    /** It is not in the house after this step. */
    readonly isOutside: boolean;
  }[];
};

const dayMilliseconds = 86_400_000;
const rowHeight = 34;

/** How long it stayed as a step left it: hours below two days. */
const stay = (from: string, to: string): string => {
  const days = (Date.parse(to) - Date.parse(from)) / dayMilliseconds;
  return days < 2 ? `${Math.max(0, Math.round(days * 24))} h` : `${Math.round(days)} d`;
};

const step = (view: CustodyLineView, index: number, width: number): readonly Shape[] => {
  const one = view.steps[index]!;
  const next = view.steps[index + 1];
  const y = px(22 + index * rowHeight);
  const bead: Shape = {
    kind: "circle",
    x: 96,
    y,
    r: 5,
    ink: next ? "ink" : "heat",
    mode: one.isOutside ? "line" : "fill",
    width: 2,
  };
  const words = fitText(one.label, width - 116, 12);
  const texts = [note(one.day, 8, y + 4), note(words, 110, y + 4, "start", "ink")];
  if (!next) return [bead, ...texts];
  // Dashed while it is out of the laboratory's hands.
  const line = stroke([96, y + 6], [96, y + rowHeight - 6], "edge", 2, one.isOutside ? "2 4" : undefined);
  return [line, bead, ...texts, note(stay(one.at, next.at), 110, y + 21)];
};

/** The custody log as a line from hand to hand, downward in the order of time, with how long each had it. */
export function custodyLine(view: CustodyLineView, width = 640): Drawing {
  return {
    width,
    height: 12 + view.steps.length * rowHeight,
    title: view.title,
    description: `${view.steps.length} steps${view.steps.length === 0 ? "" : `, the last: ${view.steps.at(-1)?.label}`}.`,
    shapes: view.steps.flatMap((_, index) => step(view, index, width)),
    table: {
      caption: "Custody log",
      columns: [
        { header: "When" },
        { header: "What" },
        { header: "From" },
        { header: "To" },
        { header: "Condition" },
        { header: "Recorded by" },
      ],
      rows: view.steps.map((one) => [
        `${one.at.slice(0, 16).replace("T", " ")} UTC`,
        one.label,
        one.from,
        one.to,
        one.condition,
        one.by,
      ]),
    },
  };
}
