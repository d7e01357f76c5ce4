import { z } from "zod";
import type { OrderSnapshot } from "./order-snapshot";

/** What a furnace's hours are reckoned from, in the words of a snapshot. */
const takesHours = ["how many", "setpoints", "options", "where it is done"];

const hoursOf = ({ terms, lines }: OrderSnapshot): string =>
  JSON.stringify([
    // Express goes before all that is not promised.
    terms.urgency ?? "",
    ...lines.map(({ says }) => takesHours.map((label) => says[label] ?? "")).toSorted(),
  ]);

type Change = {
  readonly changedAt: Date;
  readonly before: OrderSnapshot;
  readonly after: OrderSnapshot;
};

/** As far as it is asked here. */
const Basis = z.looseObject({ reckonedAt: z.iso.datetime().optional() });

/** When a promised day was reckoned, by the basis stored with it; of a basis that does not say, before everything. */
export const reckonedAt = (basis: string): Date => new Date(Basis.parse(JSON.parse(basis)).reckonedAt ?? 0);

/** Whether the furnace work of an order changed after the day was reckoned that is promised for it. */
export const hasHoursChanged = (reckoned: Date, changes: readonly Change[]): boolean =>
  changes.some(({ changedAt, before, after }) => changedAt > reckoned && hoursOf(before) !== hoursOf(after));
