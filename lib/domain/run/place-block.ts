import { ok, type Result, refuse } from "../refusal";

/** What a readings file or a typed entry gives; times in its own clock. */
export type BlockDraft = {
  readonly clock: "seconds" | "microseconds-since-1970";
  readonly channels: readonly {
    readonly channel: string;
    readonly times: Float64Array;
    readonly microvolts: Float64Array;
    readonly polarity: Int8Array;
  }[];
};

export type PlacedBlock = {
  /** Zero of the run's seconds. */
  readonly startedAt: Date;
  readonly channels: readonly {
    readonly channel: string;
    readonly times: Float64Array;
    readonly values: Float64Array;
    readonly polarity: Int8Array;
  }[];
};

const edge = (
  draft: BlockDraft,
  pick: (times: Float64Array) => number,
  better: (a: number, b: number) => number,
) => draft.channels.map(({ times }) => pick(times)).reduce((a, b) => better(a, b)); // reduce hands on more than two
const firstOf = (draft: BlockDraft): number => edge(draft, (times) => times[0] as number, Math.min);
const lastOf = (draft: BlockDraft): number => edge(draft, (times) => times.at(-1) as number, Math.max);

/** The run's start is told by its first block; a file in seconds without a moment is taken to end when it arrived. */
const startOf = (draft: BlockDraft, told: Date | null, now: Date): Date => {
  if (draft.clock === "microseconds-since-1970")
    return new Date(Math.floor(firstOf(draft) / 1_000_000) * 1000);
  return told ?? new Date(Math.floor(now.getTime() / 1000) * 1000 - Math.ceil(lastOf(draft)) * 1000);
};

const secondsIn = (draft: BlockDraft, times: Float64Array, startedAt: Date): Float64Array => {
  if (draft.clock === "seconds") return times;
  // Integers below 2^53 throughout, so that the division is the only rounding.
  const zero = startedAt.getTime() * 1000;
  return times.map((microseconds) => (microseconds - zero) / 1_000_000);
};

/**
 * Sets a block's readings on the run's own clock: seconds since its first reading. A later block has to follow the
 * last reading of each of its channels; nothing may lie in the future.
 */
export const placeBlock = (
  draft: BlockDraft,
  run: {
    readonly startedAt: Date | null;
    /** Last second there is of each channel. */
    readonly lastSeconds: ReadonlyMap<string, number>;
  },
  told: Date | null,
  now: Date,
): Result<PlacedBlock> => {
  const startedAt = run.startedAt ?? startOf(draft, told, now);
  const channels = draft.channels.map(({ channel, times, microvolts, polarity }) => ({
    channel,
    times: secondsIn(draft, times, startedAt),
    values: microvolts,
    polarity,
  }));
  for (const { channel, times } of channels) {
    const last = run.lastSeconds.get(channel);
    const first = times[0] as number;
    if (last !== undefined && first <= last)
      return refuse(
        "rule",
        `Channel ${channel} begins at ${first} s of the run, but its readings go to ${last} s already. Upload what follows, not what is there. Nothing was stored.`,
      );
    if (first < 0)
      return refuse(
        "rule",
        `Channel ${channel} begins ${-first} s before the run's first reading. Upload the files of a run in the order of their times. Nothing was stored.`,
      );
  }
  // An hour for clocks that disagree; beyond it the zone or the day is wrong.
  const end = startedAt.getTime() + 1000 * Math.max(...channels.map(({ times }) => times.at(-1) as number));
  if (end > now.getTime() + 3_600_000)
    return refuse(
      "rule",
      `The last reading would lie in the future (${new Date(end).toISOString()}). Check the scanner's clock and its time zone. Nothing was stored.`,
    );
  return ok({ startedAt, channels });
};
