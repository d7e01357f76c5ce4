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
  /** The run that is hot now; null = none is. */
  readonly hot: RunLine | null;
  /** Planned runs in the order they were planned. */
  readonly queue: readonly RunLine[];
  readonly bars: readonly FurnaceBar[];
};

export type RunLine = {
  readonly number: string;
  readonly sensors: number;
  readonly highestCelsius: number | null;
  readonly since: string | null;
};

type Furnace = FurnaceBoard[number];

const lineOf = (run: Furnace["runs"][number]): RunLine => ({
  number: run.number,
  sensors: run.sensors,
  highestCelsius: run.setpoints.reduce<number | null>(
    (highest, { celsius }) => (highest === null || celsius > highest ? celsius : highest),
    null,
  ),
  since: run.startedAt?.toISOString() ?? null,
});

const barOf = (furnaceId: string, slot: Furnace["slots"][number]): FurnaceBar => {
  const label = slot.run?.number ?? slot.order?.number ?? (slot.note || "Taken");
  return {
    label,
    detail: slot.order ? `${slot.order.number}, ${slot.order.customer.name}` : slot.note,
    href: slot.run
      ? `/runs/${slot.run.number}`
      : slot.order
        ? `/orders/${slot.order.number}`
        : `/furnaces/${furnaceId}`,
    startsAt: slot.startsAt.toISOString(),
    endsAt: slot.endsAt.toISOString(),
  };
};

/** What each furnace does now, what waits for it, and for what it is taken. */
export const furnaceRows = (furnaces: FurnaceBoard): readonly FurnaceRow[] =>
  furnaces.map(({ id, tag, name, runs, slots }) => {
    const hot = runs.find(({ state }) => state === "measuring");
    return {
      id,
      tag,
      name,
      hot: hot ? lineOf(hot) : null,
      queue: runs.filter((run) => run !== hot).map(lineOf),
      bars: slots.map((slot) => barOf(id, slot)),
    };
  });
