import type { PriceKey, PricePer } from "./keys";

/** A line of the list. Days as YYYY-MM-DD; amount in the smallest unit of the currency. */
export type Price = {
  readonly id: string;
  readonly key: PriceKey;
  readonly title: string;
  readonly per: PricePer;
  /** null = every type. */
  readonly typeLetter: string | null;
  readonly amount: number;
  readonly validFrom: string;
  /** Its last day; null = until another comes. */
  readonly validUntil: string | null;
};

export const isPriceInForce = (price: Pick<Price, "validFrom" | "validUntil">, day: string): boolean =>
  price.validFrom <= day && (price.validUntil === null || price.validUntil >= day);
