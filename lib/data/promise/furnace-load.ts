import type { Tx } from "@/lib/data/in-scope";
import { type FurnaceWorkRow, furnaceWork } from "@/lib/data/sql/furnace-work";
import { type ReservedHoursRow, reservedHours } from "@/lib/data/sql/reserved-hours";
import { readPlan } from "@/lib/domain/furnace/characterisation-plan";
import { neededKinds } from "@/lib/domain/furnace/survey-kinds";
import { placeWork } from "@/lib/domain/promise/place-work";
import type { PromisePolicy } from "@/lib/domain/promise/policy";
import { readPromiseBasis } from "@/lib/domain/promise/promise-basis";
import { stillReserved } from "@/lib/domain/promise/still-reserved";

const hour = 3_600_000;

/** The setpoints of a run; of a characterisation, each survey that has to be made and is not recorded. */
const dwellsOf = ({ celsius, plan, surveyed }: FurnaceWorkRow): readonly number[] =>
  plan === null
    ? celsius
    : readPlan(plan).temperatures.flatMap((at) =>
        neededKinds.filter((kind) => !surveyed.includes(`${kind} ${at}`)).map(() => at),
      );

const sensorsOf = ({ basis, furnaceTag, startsAt }: ReservedHoursRow): number | null =>
  readPromiseBasis(basis).find(
    (one) => one.furnace === furnaceTag && Date.parse(one.startsAt) === startsAt.getTime(),
  )?.sensors ?? null;

/** Hours reserved for promised orders that are not over since a moment, as far as their sensors are in no run yet. */
export const loadReservations = async (tx: Tx, since: Date) => {
  const rows = (await reservedHours(tx, since)).map((row) => ({
    ...row,
    startsAt: row.startsAt.getTime(),
    endsAt: row.endsAt.getTime(),
    sensors: sensorsOf(row),
  }));
  const reserved = stillReserved(rows);
  return {
    reserved,
    /** Reserved still by their rows, though a run has their sensors. */
    usedUp: rows.filter((row) => !reserved.includes(row)).map(({ id }) => id),
  };
};

/**
 * The load of the furnaces: the hours reserved for promised orders that are not over since a moment, as far as their
 * sensors are in no run yet, and the hours of runs and characterisations, hot or planned. Reckoned from the next full
 * hour, so that what was shown a minute ago is still so.
 */
export const loadFurnaceLoad = async (tx: Tx, since: Date, now: Date, policy: PromisePolicy) => {
  const { reserved } = await loadReservations(tx, since);
  const works = (await furnaceWork(tx)).map((row) => ({
    ...row,
    startedAt: row.startedAt?.getTime() ?? null,
    celsius: dwellsOf(row),
    highestCelsius: [...row.celsius, ...(row.plan === null ? [] : readPlan(row.plan).temperatures)].reduce<
      number | null
    >((highest, at) => (highest === null || at > highest ? at : highest), null),
  }));
  const from = Math.ceil(now.getTime() / hour) * hour;
  const ahead = reserved.filter(({ endsAt }) => endsAt > now.getTime());
  return { reserved, placed: placeWork(works, ahead, from, policy) };
};

export type FurnaceLoad = Awaited<ReturnType<typeof loadFurnaceLoad>>;
