import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

export type FurnaceQueueView = {
  readonly now: string;
  readonly furnaces: readonly {
    readonly tag: string;
    readonly name: string;
    readonly slots: readonly {
      readonly startsAt: string;
      readonly endsAt: string;
      readonly note: string;
      readonly order: string;
      readonly isExpress: boolean;
      readonly promisedOn: string;
    }[];
  }[];
};

const day = 86_400_000;
const midnight = (at: number): number => Math.floor(at / day) * day;
const moment = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 16)}`;

/** From today over what is taken, a week at least and eight at most. */
const spanOf = (view: FurnaceQueueView): readonly [number, number] => {
  const from = midnight(Date.parse(view.now));
  const ends = view.furnaces.flatMap(({ slots }) => slots.map(({ endsAt }) => Date.parse(endsAt)));
  const last = Math.max(from + 7 * day, ...ends.map((end) => midnight(end) + day));
  return [from, Math.min(last, from + 56 * day)];
};

const box = { left: 78, top: 26, row: 34 } as const;

type Frame = { readonly x: (at: number) => number; readonly right: number; readonly bottom: number };

/** A line at each midnight, and the date at as many of them as there is room for. */
const daysOf = ([from, to]: readonly [number, number], { x, bottom, right }: Frame): readonly Shape[] => {
  const count = Math.round((to - from) / day);
  const every = Math.max(1, Math.ceil((count * 46) / (right - box.left)));
  return Array.from({ length: count }, (_, index) => from + index * day).flatMap((at, index) => [
    stroke([px(x(at)), box.top], [px(x(at)), bottom], "faint"),
    ...(index % every === 0
      ? [note(new Date(at).toISOString().slice(5, 10), px(x(at) + 2), box.top - 8, "start")]
      : []),
  ]);
};

const slotShapes = (
  slot: FurnaceQueueView["furnaces"][number]["slots"][number],
  y: number,
  { x, right }: Frame,
): readonly Shape[] => {
  const left = px(Math.max(box.left, Math.min(right, x(Date.parse(slot.startsAt)))));
  const w = px(Math.max(2, Math.min(right, x(Date.parse(slot.endsAt))) - left));
  const bar: Shape = {
    ...{ kind: "rect", x: left, y: y + 5, w, h: box.row - 12 },
    ...(slot.isExpress ? ({ ink: "heat", mode: "fill" } as const) : ({ ink: "edge", mode: "fill" } as const)),
  };
  // Express has a second edge besides its colour.
  const edge = slot.isExpress ? [stroke([left, y + 2.5], [px(left + w), y + 2.5], "heat", 2)] : [];
  if (slot.order === "") return [bar, ...edge];
  const label = `Order ${slot.order}, ${moment(slot.startsAt)} to ${moment(slot.endsAt)}`;
  return [{ kind: "link", href: `/orders/${slot.order}`, label, shapes: [bar, ...edge] }];
};

/** Furnaces and the hours taken of them, from today on: a bar for each load. */
export function furnaceQueue(view: FurnaceQueueView, width = 640): Drawing {
  const span = spanOf(view);
  const right = width - 8;
  const bottom = box.top + view.furnaces.length * box.row;
  const x = (at: number): number => box.left + ((at - span[0]) / (span[1] - span[0])) * (right - box.left);
  const frame = { x, right, bottom };
  const rows = view.furnaces.flatMap(({ tag, slots }, index) => {
    const y = box.top + index * box.row;
    return [
      note(tag, box.left - 8, px(y + box.row / 2 + 4), "end", "ink"),
      stroke([box.left, px(y + box.row)], [right, px(y + box.row)], "faint"),
      ...slots.flatMap((slot) => slotShapes(slot, y, frame)),
    ];
  });
  const now = px(x(Date.parse(view.now)));
  const count = view.furnaces.reduce((sum, { slots }) => sum + slots.length, 0);
  return {
    width,
    height: bottom + 10,
    title: "Furnaces and the hours taken of them",
    description: `${view.furnaces.length} furnaces, ${count} loads planned. An express load has a second line above its bar.`,
    shapes: [...daysOf(span, frame), ...rows, stroke([now, box.top], [now, bottom], "heat", 1.5, "4 3")],
    table: {
      caption: "Hours taken",
      columns: [...["Furnace", "From", "To", "Order", "What", "Promised"].map((header) => ({ header }))],
      rows: view.furnaces.flatMap(({ tag, slots }) =>
        slots.map((slot) => [
          tag,
          moment(slot.startsAt),
          moment(slot.endsAt),
          slot.order ? `${slot.order}${slot.isExpress ? ", express" : ""}` : "none",
          slot.note,
          slot.promisedOn,
        ]),
      ),
    },
  };
}
