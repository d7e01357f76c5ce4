import { firstGap, type Hours, hoursFrom } from "./first-gap";
import { loadHours } from "./furnace-hours";
import type { PromisePolicy } from "./policy";

/** A run or a characterisation that is in a furnace or is to go into one. */
export type FurnaceWork = {
  readonly number: string;
  readonly furnaceId: string;
  readonly isMeasuring: boolean;
  /** Milliseconds; null = not told, or not begun. */
  readonly startedAt: number | null;
  readonly rampUpCelsiusPerHour: number | null;
  readonly rampDownCelsiusPerHour: number | null;
  /** One for each dwell that is to come. */
  readonly celsius: readonly number[];
};

const hour = 3_600_000;

/**
 * The hours that work takes, reckoned like those of a promise: what is hot from when it began and, however long that
 * took, until it has cooled from now on; then what is planned, in its order, each into the first gap between these and
 * what is reserved.
 */
export const placeWork = <Work extends FurnaceWork>(
  works: readonly Work[],
  reserved: readonly Hours[],
  now: number,
  policy: PromisePolicy,
): readonly { readonly work: Work; readonly hours: Hours }[] => {
  const hoursOf = (work: Work) =>
    loadHours({ setpointsCelsius: work.celsius, sensors: work.celsius.length, sets: 1 }, work, policy);
  const placed: { readonly work: Work; readonly hours: Hours }[] = [];
  for (const work of works.filter(({ isMeasuring }) => isMeasuring)) {
    const needed = hoursOf(work);
    const hours = hoursFrom(work.furnaceId, needed, work.startedAt ?? now, policy);
    placed.push({ work, hours: { ...hours, endsAt: Math.max(hours.endsAt, now + needed.cooling * hour) } });
  }
  for (const work of works.filter(({ isMeasuring }) => !isMeasuring)) {
    const taken = [...reserved, ...placed.map(({ hours }) => hours)];
    placed.push({ work, hours: firstGap(work.furnaceId, hoursOf(work), now, taken, policy) });
  }
  return placed;
};
