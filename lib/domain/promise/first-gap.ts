import { afterWork, nextWork } from "./calendar";
import type { LoadHours } from "./furnace-hours";
import type { PromisePolicy } from "./policy";

/** Hours of a furnace, in milliseconds. */
export type Hours = { readonly furnaceId: string; readonly startsAt: number; readonly endsAt: number };

const hour = 3_600_000;

/** A load that begins then: attended within working hours, cooling whenever it is. */
export const hoursFrom = (
  furnaceId: string,
  hours: LoadHours,
  startsAt: number,
  policy: PromisePolicy,
): Hours => ({
  ...{ furnaceId, startsAt },
  endsAt: afterWork(startsAt, hours.attended, policy) + hours.cooling * hour,
});

/** The first gap of a furnace, from a moment on, that a load fits into: begun in working hours. */
export const firstGap = (
  furnaceId: string,
  hours: LoadHours,
  from: number,
  taken: readonly Hours[],
  policy: PromisePolicy,
): Hours => {
  const busy = taken.filter((slot) => slot.furnaceId === furnaceId);
  let startsAt = nextWork(from, policy);
  for (;;) {
    const gap = hoursFrom(furnaceId, hours, startsAt, policy);
    const clash = busy.find((slot) => slot.startsAt < gap.endsAt && startsAt < slot.endsAt);
    if (!clash) return gap;
    startsAt = nextWork(clash.endsAt, policy);
  }
};
