import { ok, type Result, refuse } from "../refusal";
import type { Price } from "./price";

/** The day before, as YYYY-MM-DD. */
export const dayBefore = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);

type NewPrice = Pick<Price, "key" | "per" | "typeLetter" | "validFrom">;

/** A new price ends the one it follows on the day before. Offers made already keep what stood in them. */
export const decideNewPrice = (
  price: NewPrice,
  list: readonly Price[],
  today: string,
): Result<{ readonly ends: { readonly id: string; readonly lastDay: string } | null }> => {
  if (price.validFrom < today)
    return refuse("rule", "A price does not begin in the past. Nothing was stored.", {
      validFrom: `Write ${today} or a later day: what was offered before was offered at the price of its day.`,
    });
  const same = list.filter(
    (one) => one.key === price.key && one.per === price.per && one.typeLetter === price.typeLetter,
  );
  const later = same.find(
    (one) => one.validFrom >= price.validFrom && (one.validUntil === null || one.validUntil >= one.validFrom),
  );
  if (later)
    return refuse("rule", "There is a price from that day on already. Nothing was stored.", {
      validFrom: `“${later.title}” begins on ${later.validFrom}. Write a day after it.`,
    });
  const before = same.find((one) => one.validUntil === null || one.validUntil >= price.validFrom);
  return ok({ ends: before ? { id: before.id, lastDay: dayBefore(price.validFrom) } : null });
};

/** Only a price that has no last day is given one, from today on. */
export const decidePriceEnd = (price: Price, lastDay: string, today: string): Result<string> => {
  if (price.validUntil !== null)
    return refuse("wrong-state", `This price ends with ${price.validUntil} already. Nothing was changed.`);
  if (lastDay < today || lastDay < price.validFrom)
    return refuse("rule", "A price ends today at the earliest. Nothing was changed.", {
      lastDay: `Write ${today > price.validFrom ? today : price.validFrom} or a later day.`,
    });
  return ok(lastDay);
};
