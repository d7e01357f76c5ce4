import { workingDayAfter } from "./calendar";
import { firstGap, type Hours } from "./first-gap";
import {
  loadHours,
  loadsOf,
  type PlannedFurnace,
  type PlannedGroup,
  reaches,
  sensorsPerLoad,
} from "./furnace-hours";
import type { PromisePolicy } from "./policy";

/** Hours of a furnace that are somebody's: the number of the order, run or characterisation; empty = of none. */
export type Taken = Hours & {
  readonly of: string;
  /** Of a run: the numbers of the orders whose sensors are in it. */
  readonly orders?: readonly string[];
};

export type PlannedOrder = {
  readonly number: string;
  readonly urgency: "standard" | "express";
  /** Milliseconds; who waits longer goes first. */
  readonly since: number;
  readonly groups: readonly PlannedGroup[];
};

export type ProposedSlot = Hours & {
  readonly furnaceTag: string;
  readonly sensors: number;
  readonly setpointsCelsius: readonly number[];
};

export type PromiseProposal =
  | {
      readonly kind: "proposed";
      readonly promisedOn: string;
      readonly furnaceHours: number;
      readonly slots: readonly ProposedSlot[];
      /** Whose hours lie in front of its own in the same furnace, promised or waiting to be, in their order. */
      readonly ahead: readonly string[];
    }
  | { readonly kind: "impossible"; readonly reason: string };

export type Plan = {
  readonly order: PlannedOrder;
  /** Accepted, nothing promised yet. */
  readonly waiting: readonly PlannedOrder[];
  readonly furnaces: readonly PlannedFurnace[];
  /** What is promised stays where it is, whoever comes. */
  readonly taken: readonly Taken[];
  readonly from: number;
  readonly policy: PromisePolicy;
};

const hour = 3_600_000;

const inFurnace = (
  group: PlannedGroup,
  furnace: PlannedFurnace,
  taken: readonly Hours[],
  plan: Plan,
): ProposedSlot[] => {
  const hours = loadHours(group, furnace, plan.policy);
  const each = sensorsPerLoad(furnace, plan.policy);
  const perSet = loadsOf(group, furnace, plan.policy) / group.sets;
  const slots: ProposedSlot[] = [];
  for (let at = 0; at < perSet * group.sets; at += 1) {
    const from = slots.at(-1)?.endsAt ?? plan.from;
    const gap = firstGap(furnace.id, hours, from, [...taken, ...slots], plan.policy);
    const sensors = Math.min(each, group.sensors - (at % perSet) * each);
    slots.push({ ...gap, furnaceTag: furnace.tag, sensors, setpointsCelsius: group.setpointsCelsius });
  }
  return slots;
};

/** The furnace that is done with the group first; by tag where two are. null = none reaches it. */
const bestFor = (
  group: PlannedGroup,
  taken: readonly Hours[],
  plan: Plan,
): readonly ProposedSlot[] | null => {
  const end = (slots: readonly ProposedSlot[]): number => slots.at(-1)?.endsAt ?? plan.from;
  const each = plan.furnaces
    .filter((furnace) => reaches(furnace, group))
    .map((furnace) => inFurnace(group, furnace, taken, plan));
  return each.reduce<readonly ProposedSlot[] | null>(
    (best, slots) => (best === null || end(slots) < end(best) ? slots : best),
    null,
  );
};

/** Express before standard, then who has waited longer; what no furnace reaches waits for nobody. */
const sooner = ({ order, waiting }: Plan): readonly PlannedOrder[] => {
  const rank = ({ urgency }: PlannedOrder): number => (urgency === "express" ? 0 : 1);
  const before = (left: PlannedOrder, right: PlannedOrder): number =>
    rank(left) - rank(right) || left.since - right.since || (left.number < right.number ? -1 : 1);
  return waiting.filter((one) => one.number !== order.number && before(one, order) < 0).toSorted(before);
};

/** Those whose hours keep a load from beginning sooner; what is over before the plan begins keeps nobody. */
const inFront = (
  slots: readonly ProposedSlot[],
  taken: readonly Taken[],
  from: number,
): readonly string[] => {
  const earlier = taken
    .filter(({ endsAt }) => endsAt > from)
    .filter((one) => slots.some((own) => own.furnaceId === one.furnaceId && one.startsAt < own.startsAt))
    .toSorted((left, right) => left.startsAt - right.startsAt);
  return [...new Set(earlier.map(({ of }) => of).filter(Boolean))];
};

const reachOf = (furnaces: readonly PlannedFurnace[]): string =>
  furnaces.length === 0
    ? "no furnace is in service"
    : furnaces
        .map((one) => `${one.tag} reaches ${one.minimumCelsius} to ${one.maximumCelsius} °C`)
        .join(", ");

const points = (celsius: readonly number[]): string =>
  celsius.map((at) => `${Number(at.toFixed(1))} °C`).join(", ");

/** Points that no furnace reaches by itself; where each is reached by some, that they need one furnace for them all. */
const unreached = ({ setpointsCelsius }: PlannedGroup, furnaces: readonly PlannedFurnace[]): string => {
  const outside = setpointsCelsius.filter(
    (at) => !furnaces.some((one) => at >= one.minimumCelsius && at <= one.maximumCelsius),
  );
  return outside.length > 0
    ? `No furnace reaches ${points(outside)}`
    : `No furnace reaches all of ${points(setpointsCelsius)}, and a load stays in one`;
};

/**
 * The earliest day an order can be promised for, from the load of the furnaces: what is promised stays, who waits
 * longer goes first, express goes before all that is not promised yet.
 */
export const proposePromise = (plan: Plan): PromiseProposal => {
  const { order, policy } = plan;
  const taken = [...plan.taken];
  for (const { groups, number } of sooner(plan))
    for (const group of groups)
      taken.push(...(bestFor(group, taken, plan) ?? []).map((slot) => ({ ...slot, of: number })));
  const slots: ProposedSlot[] = [];
  for (const group of order.groups.filter(({ sensors }) => sensors > 0)) {
    const found = bestFor(group, [...taken, ...slots], plan);
    if (found === null)
      return {
        kind: "impossible",
        reason: `${unreached(group, plan.furnaces)}: ${reachOf(plan.furnaces)}.`,
      };
    slots.push(...found);
  }
  // What of it is in a furnace already is ready when that is.
  const own = plan.taken.filter(({ orders }) => orders?.includes(order.number));
  const readyAt = [...slots, ...own].reduce((latest, { endsAt }) => Math.max(latest, endsAt), plan.from);
  const milliseconds = slots.reduce((sum, { startsAt, endsAt }) => sum + endsAt - startsAt, 0);
  return {
    kind: "proposed",
    promisedOn: workingDayAfter(readyAt, policy.reviewDays, policy),
    furnaceHours: Number((milliseconds / hour).toFixed(2)),
    slots,
    ahead: inFront(slots, taken, plan.from),
  };
};
