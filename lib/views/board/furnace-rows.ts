import type { FurnaceBoard } from "@/lib/data/board/load-furnaces";

export type FurnaceBar = {
  readonly label: string;
  readonly detail: string;
  readonly href: string;
  readonly startsAt: string;
  readonly endsAt: string;
};

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

const reservedBar = (slot: Furnace["reserved"][number]): FurnaceBar => ({
  label: slot.order ?? (slot.note || "Taken"),
  detail: slot.order ? `reserved for ${slot.order}, ${slot.customer}` : slot.note,
  href: slot.order ? `/orders/${slot.order}` : `/furnaces/${slot.furnaceId}`,
  ...{ startsAt: iso(slot.startsAt), endsAt: iso(slot.endsAt) },
});

const workBar = (placed: Placed): FurnaceBar => {
  const { href, number, what } = lineOf(placed);
  return {
    ...{ label: number, href },
    detail: `${placed.work.isMeasuring ? "hot" : "planned"}, ${what}`,
    ...{ startsAt: iso(placed.hours.startsAt), endsAt: iso(placed.hours.endsAt) },
  };
};

/** What each furnace does now, what waits for it, and for what it is taken up to a moment. */
export const furnaceRows = (furnaces: FurnaceBoard, until: Date): readonly FurnaceRow[] =>
  furnaces.map(({ id, tag, name, placed, reserved }) => {
    const hot = placed.find(({ work }) => work.isMeasuring);
    return {
      ...{ id, tag, name },
      hot: hot ? lineOf(hot) : null,
      queue: placed.filter((one) => one !== hot).map(lineOf),
      bars: [...reserved.map(reservedBar), ...placed.map(workBar)]
        .filter(({ startsAt }) => Date.parse(startsAt) < until.getTime())
        .toSorted((left, right) => (left.startsAt < right.startsAt ? -1 : 1)),
    };
  });
