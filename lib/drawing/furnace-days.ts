import { fitText } from "@/lib/drawing/fit-text";
import { type Drawing, note, px, type Shape, stroke } from "@/lib/drawing/scene";

export type FurnaceDaysView = {
  readonly title: string;
  readonly from: string;
  readonly until: string;
  readonly now: string;
  readonly furnaces: readonly {
    readonly tag: string;
    readonly hot: { readonly number: string } | null;
    readonly bars: readonly {
      readonly label: string;
      readonly detail: string;
      readonly href: string;
      readonly startsAt: string;
      readonly endsAt: string;
      readonly kind: "reserved" | "hot" | "planned";
      readonly isOverlapping: boolean;
    }[];
  }[];
};

type Room = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly row: number;
  /** Letters of the furnaces' names and of what they are taken for: to be read from two metres where there is room. */
  readonly large: number;
  readonly small: number;
};

const dayMilliseconds = 86_400_000;
const weekdays = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] as const;

const roomOf = (width: number): Room =>
  width < 600
    ? { left: 66, right: width - 6, top: 30, row: 44, large: 17, small: 12 }
    : { left: 144, right: width - 8, top: 40, row: 74, large: 28, small: 20 };

/** Days as columns: a line where each begins, its name above, a wash where nobody works. */
const dayShapes = (view: FurnaceDaysView, room: Room, x: (at: number) => number, bottom: number) => {
  const [from, until] = [Date.parse(view.from), Date.parse(view.until)];
  const days = Math.round((until - from) / dayMilliseconds);
  const narrow = room.large < 20;
  return Array.from({ length: days }, (_, index) => from + index * dayMilliseconds).flatMap(
    (at, index): readonly Shape[] => {
      const day = new Date(at);
      const name = weekdays[day.getUTCDay()] ?? "";
      const isRest = name === "Sat" || name === "Sun";
      const [left, right] = [px(x(at)), px(x(at + dayMilliseconds))];
      const wash: Shape = {
        kind: "rect",
        ...{ x: left, y: room.top, w: px(right - left), h: bottom - room.top },
        ink: "sunken",
        mode: "fill",
      };
      const said = narrow ? String(day.getUTCDate()) : `${name} ${day.getUTCDate()}`;
      return [
        ...(isRest ? [wash] : []),
        stroke([left, room.top - 6], [left, bottom], "faint"),
        {
          ...note(said, px((left + right) / 2), room.top - 10, "middle", index === 0 ? "ink" : "muted"),
          size: room.small,
          bold: index === 0,
        },
      ];
    },
  );
};

type Bar = FurnaceDaysView["furnaces"][number]["bars"][number];

/** Whole, or the number alone, or smaller, or its end: what is seen must be found in the link's name, and no half word is. */
const barText = (label: string, width: number, size: number) => {
  const [number = ""] = label.split(",");
  return [
    { text: label, size },
    { text: number, size },
    { text: number, size: size * 0.75 },
    { text: number.split("-").at(-1) ?? "", size },
  ].find((one) => one.text !== "" && fitText(one.text, width, one.size) === one.text);
};

const barShapes = (bar: Bar, room: Room, x: (at: number) => number, y: number): readonly Shape[] => {
  const left = px(Math.max(room.left, x(Date.parse(bar.startsAt))));
  const right = px(Math.min(room.right, x(Date.parse(bar.endsAt))));
  const w = Math.max(2, px(right - left - 2));
  // What runs above, what is reserved below it, where both want the same hours.
  const whole = room.row - 16;
  const h = bar.isOverlapping ? px(whole / 2 - 1) : whole;
  const top = y + 8 + (bar.isOverlapping && bar.kind === "reserved" ? px(whole / 2 + 1) : 0);
  const box = { kind: "rect", x: left + 1, y: top, w, h } as const;
  const text = barText(bar.label, w - 10, room.small);
  return [
    {
      kind: "link",
      href: bar.href,
      label: `${bar.label}, ${bar.detail}`,
      shapes: [
        ...(bar.kind === "reserved"
          ? [{ ...box, ink: "muted", mode: "line", width: 1.5, dash: "6 4" } as const]
          : [
              { ...box, ink: "heat-wash", mode: "fill" } as const,
              { ...box, ink: "heat", mode: "line", width: 1.5 } as const,
            ]),
        ...(text
          ? [
              {
                ...note(text.text, left + 7, px(top + h / 2 + text.size / 3), "start", "ink"),
                size: text.size,
              },
            ]
          : []),
      ],
    },
  ];
};

const stateSize = (room: Room): number => Math.max(12, room.small * 0.8);

/** Which run is hot; where there is little room, that one is. */
const hotText = ({ hot }: FurnaceDaysView["furnaces"][number], room: Room): string => {
  if (hot === null) return "not hot";
  return room.large < 20 ? "hot" : fitText(`hot: ${hot.number}`, room.left - 6, stateSize(room));
};

const minuteOf = (at: string): string => at.slice(0, 16).replace("T", " ");

const table = (view: FurnaceDaysView): Drawing["table"] => ({
  caption: "For what each furnace is taken, times in UTC",
  columns: [
    { header: "Furnace" },
    { header: "From" },
    { header: "To" },
    { header: "Taken by" },
    { header: "What it is" },
  ],
  rows: view.furnaces.flatMap(({ tag, bars }) =>
    bars.map((bar) => [tag, minuteOf(bar.startsAt), minuteOf(bar.endsAt), bar.label, bar.detail]),
  ),
});

/** The furnaces as rows and the coming days as columns: what each is taken for, which is hot, where now is. */
export function furnaceDays(view: FurnaceDaysView, width = 1200): Drawing {
  const room = roomOf(width);
  const [from, until] = [Date.parse(view.from), Date.parse(view.until)];
  const x = (at: number): number =>
    room.left + ((at - from) / Math.max(1, until - from)) * (room.right - room.left);
  const bottom = room.top + view.furnaces.length * room.row;
  const now = px(x(Date.parse(view.now)));
  const rows = view.furnaces.flatMap((furnace, index): readonly Shape[] => {
    const y = room.top + index * room.row;
    const name = fitText(furnace.tag, room.left - 10, room.large);
    return [
      stroke([0, y], [room.right, y], "edge"),
      {
        ...note(name, 0, px(y + room.row * 0.5), "start", "ink"),
        size: room.large,
        bold: true,
      },
      {
        ...note(hotText(furnace, room), 0, px(y + room.row * 0.5 + room.small + 4), "start"),
        ink: furnace.hot ? ("heat" as const) : ("muted" as const),
        size: stateSize(room),
      },
      ...furnace.bars.flatMap((bar) => barShapes(bar, room, x, y)),
    ];
  });
  const taken = view.furnaces.reduce((sum, { bars }) => sum + bars.length, 0);
  const hot = view.furnaces.filter((furnace) => furnace.hot !== null).length;
  return {
    width,
    height: bottom + 10,
    title: view.title,
    description: `${view.furnaces.length} furnaces, ${hot} hot now, taken ${taken} times in these days.`,
    shapes: [
      ...dayShapes(view, room, x, bottom),
      ...rows,
      stroke([0, bottom], [room.right, bottom], "edge"),
      stroke([now, room.top - 6], [now, bottom], "bad", 2, "5 4"),
    ],
    table: table(view),
  };
}
