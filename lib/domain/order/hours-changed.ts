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

/** Whether the furnace work of an order changed after the day was reckoned that is promised for it. */
export const hasHoursChanged = (reckonedAt: Date, changes: readonly Change[]): boolean =>
  changes.some(
    ({ changedAt, before, after }) => changedAt > reckonedAt && hoursOf(before) !== hoursOf(after),
  );
