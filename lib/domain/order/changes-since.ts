import { formatMoney } from "../price/money";
import type { SetpointScope } from "./against-scope";

type Compared<T> = { readonly before: T; readonly now: T };

export type Since = {
  /** Title and revision; null = there was none. */
  readonly procedure: Compared<string | null>;
  readonly points: readonly (Compared<SetpointScope> & {
    readonly position: number;
    readonly setpoint: string;
  })[];
  /** Total by the list of the day; null = something had no price. */
  readonly price: Compared<number | null> & { readonly currency: string };
};

const scopeWords = ({ state, capability }: SetpointScope): string => {
  switch (state) {
    case "inside":
      return `in scope, U at least ${capability}`;
    case "outside":
    case "unusable":
      return "outside the scope";
    case "not-stated":
      return "no scope stated";
  }
};

const money = (amount: number | null, currency: string): string =>
  amount === null ? "not wholly priced" : formatMoney(amount, currency);

/** What whoever repeats an order has to know: in plain phrases, none where nothing changed (ISO/IEC 17025:2017, 7.1.1). */
export const changesSince = ({ procedure, points, price }: Since): readonly string[] => {
  const moved = points.filter(({ before, now }) => scopeWords(before) !== scopeWords(now));
  return [
    ...(procedure.before === procedure.now
      ? []
      : [`procedure: was ${procedure.before ?? "none"}, is ${procedure.now ?? "none"}`]),
    ...moved.map(
      ({ position, setpoint, before, now }) =>
        `line ${position} at ${setpoint}: was ${scopeWords(before)}, is ${scopeWords(now)}`,
    ),
    ...(price.before === price.now
      ? []
      : [
          `price by the list: was ${money(price.before, price.currency)}, is ${money(price.now, price.currency)}`,
        ]),
  ];
};
