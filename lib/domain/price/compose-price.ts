import {
  type ChargedLine,
  type ChargedOrder,
  type PriceKey,
  type PricePer,
  priceKeyLabels,
  wantedKeys,
} from "./keys";
import { isPriceInForce, type Price } from "./price";

export type PriceLine = {
  readonly key: PriceKey;
  readonly per: PricePer;
  readonly title: string;
  /** The order line it is for; null = the order. */
  readonly position: number | null;
  readonly quantity: number;
  readonly unitAmount: number;
  readonly amount: number;
};

export type ComposedPrice = {
  readonly lines: readonly PriceLine[];
  /** null where something has no price: a sum without it would be a guess. */
  readonly total: number | null;
  /** What has no price on the day, a whole phrase each. */
  readonly missing: readonly string[];
};

const quantityOf = (per: PricePer, line: ChargedLine): number => {
  switch (per) {
    case "point":
      return line.quantity * line.points;
    case "sensor":
      return line.quantity;
    case "line":
    case "order":
      return 1;
  }
};

/** Of each manner of counting the price for the type, or else that for all types. */
const pricesFor = (prices: readonly Price[], key: PriceKey, typeLetter: string): readonly Price[] => {
  const fitting = prices.filter((price) => price.key === key);
  const pers = [...new Set(fitting.map(({ per }) => per))];
  return pers.flatMap((per) => {
    const counted = fitting.filter((price) => price.per === per);
    const own = counted.find((price) => price.typeLetter === typeLetter);
    const general = counted.find((price) => price.typeLetter === null);
    return own ?? general ?? [];
  });
};

const lineOf = (price: Price, line: ChargedLine): PriceLine => {
  const quantity = quantityOf(price.per, line);
  return {
    key: price.key,
    per: price.per,
    title: price.title,
    position: price.per === "order" ? null : line.position,
    quantity,
    unitAmount: price.amount,
    amount: quantity * price.amount,
  };
};

/** The difference to the least an order costs, where one is set. */
const topUp = (prices: readonly Price[], sum: number): readonly PriceLine[] => {
  const least = prices.find(({ key }) => key === "minimum-order");
  if (!least || sum >= least.amount) return [];
  const { key, title } = least;
  const amount = least.amount - sum;
  return [{ key, per: "order", title, position: null, quantity: 1, unitAmount: amount, amount }];
};

/**
 * What an order costs by the list of a day. What it asks for and the list has no price for is said, never guessed: a
 * price of nought is recorded as nought.
 */
export const composePrice = (order: ChargedOrder, list: readonly Price[], on: string): ComposedPrice => {
  const prices = list.filter((price) => isPriceInForce(price, on));
  const lines: PriceLine[] = [];
  const missing: string[] = [];
  const once = new Set<string>();
  for (const line of order.lines)
    for (const key of wantedKeys(line, order.urgency)) {
      const fitting = pricesFor(prices, key, line.typeLetter);
      if (fitting.length === 0)
        missing.push(`line ${line.position}, type ${line.typeLetter}: ${priceKeyLabels[key].toLowerCase()}`);
      for (const price of fitting) {
        if (price.per === "order" && once.has(price.id)) continue;
        once.add(price.id);
        lines.push(lineOf(price, line));
      }
    }
  const sum = lines.reduce((total, { amount }) => total + amount, 0);
  if (missing.length > 0) return { lines, total: null, missing };
  const all = [...lines, ...topUp(prices, sum)];
  return { lines: all, total: all.reduce((total, { amount }) => total + amount, 0), missing };
};
