import type { FurnaceBoard } from "@/lib/data/board/load-furnaces";

export type FurnaceBar = {
  readonly label: string;
  readonly detail: string;
  readonly href: string;
  readonly startsAt: string;
  readonly endsAt: string;
  /** reserved: hours kept, nothing in them yet; hot and planned: what runs or is to run. */
  readonly kind: "reserved" | "hot" | "planned";
  /** It and another are in the same furnace at the same hours: both are drawn, beside each other. */
  readonly isOverlapping: boolean;
};

export type BoardDays = { readonly from: Date; readonly now: Date; readonly until: Date };

export type FurnaceRow = {
  readonly id: string;
  readonly tag: string;
  readonly name: string;
  /** The run or characterisation that is hot now; null = none is. */
  readonly hot: WorkLine | null;
  /** What is planned, in its order. */
  readonly queue: readonly WorkLine[];
  readonly bars: readonly FurnaceBar[];
};

export type WorkLine = {
  readonly number: string;
  readonly href: string;
  readonly what: string;
};

type Furnace = FurnaceBoard[number];
type Placed = Furnace["placed"][number];

const lineOf = ({ work }: Placed): WorkLine => {
  const { furnaceId, highestCelsius, id, kind, number, sensors } = work;
  const upTo = highestCelsius === null ? "" : `, up to ${Number(highestCelsius.toFixed(1))} °C`;
  return {
    number,
    href: kind === "run" ? `/runs/${number}` : `/furnaces/${furnaceId}/characterisations/${id}`,
    what: kind === "run" ? `${sensors} sensor${sensors === 1 ? "" : "s"}${upTo}` : `characterisation${upTo}`,
  };
};

const iso = (at: number): string => new Date(at).toISOString();

type Bar = Omit<FurnaceBar, "isOverlapping">;

const reservedBar = (slot: Furnace["reserved"][number]): Bar => ({
  ...{ kind: "reserved", label: slot.order ?? (slot.note || "Taken") },
  detail: slot.order ? `reserved for ${slot.order}, ${slot.customer}` : "reserved",
  href: slot.order ? `/orders/${slot.order}` : `/furnaces/${slot.furnaceId}`,
  ...{ startsAt: iso(slot.startsAt), endsAt: iso(slot.endsAt) },
});

/** What is hot began, however its hours are reckoned: where nobody recorded when, it fills the days from their left edge. */
const beganAt = ({ work, hours }: Placed, { from, now }: BoardDays): number =>
  work.isMeasuring ? Math.min((work.hotBy ?? from).getTime(), now.getTime()) : hours.startsAt;

const workBar = (placed: Placed, days: BoardDays): Bar => {
  const { href, number, what } = lineOf(placed);
  return {
    ...{ kind: placed.work.isMeasuring ? "hot" : "planned", label: number, href },
    detail: `${placed.work.isMeasuring ? "hot" : "planned"}, ${what}`,
    ...{ startsAt: iso(beganAt(placed, days)), endsAt: iso(placed.hours.endsAt) },
  };
};

const overlap = (left: Bar, right: Bar): boolean =>
  left.startsAt < right.endsAt && right.startsAt < left.endsAt;

/** A reservation whose hours something else takes is at risk, and says by what. */
const withOverlaps = (reserved: readonly Bar[], works: readonly Bar[]): readonly FurnaceBar[] => [
  ...reserved.map((bar) => {
    const over = works.filter((work) => overlap(bar, work)).map(({ label }) => label);
    const said = over.length > 0 ? `${bar.detail}; overlaps ${over.join(", ")}: at risk` : bar.detail;
    return { ...bar, detail: said, isOverlapping: over.length > 0 };
  }),
  ...works.map((bar) => ({ ...bar, isOverlapping: reserved.some((slot) => overlap(slot, bar)) })),
];

/** What each furnace does now, what waits for it, and for what it is taken up to a moment. */
export const furnaceRows = (furnaces: FurnaceBoard, days: BoardDays): readonly FurnaceRow[] =>
  furnaces.map(({ id, tag, name, placed, reserved }) => {
    const hot = placed.find(({ work }) => work.isMeasuring);
    return {
      ...{ id, tag, name },
      hot: hot ? lineOf(hot) : null,
      queue: placed.filter((one) => one !== hot).map(lineOf),
      bars: withOverlaps(
        reserved.map(reservedBar),
        placed.map((one) => workBar(one, days)),
      )
        .filter(({ startsAt }) => Date.parse(startsAt) < days.until.getTime())
        .toSorted((left, right) => (left.startsAt < right.startsAt ? -1 : 1)),
    };
  });
