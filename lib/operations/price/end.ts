import { endPrice, loadPrices } from "@/lib/data/price/price-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { decidePriceEnd } from "@/lib/domain/price/decide-price";
import { priceEvents } from "@/lib/domain/price/events";
import { EndPriceInput } from "@/lib/domain/price/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** What is no longer offered: its price gets a last day. */
export const endPriceOfList = defineOperation({
  name: "price/end",
  permission: "price.record",
  input: EndPriceInput,
  perform: async ({ now, tx }, input) => {
    await lockName(tx, "price list");
    const price = (await loadPrices(tx)).find(({ id }) => id === input.id);
    if (!price)
      throw new Refused({ code: "not-found", message: "This price is not here. Nothing was changed." });
    const lastDay = demand(decidePriceEnd(price, input.lastDay, isoDay(now)));
    await endPrice(tx, price.id, lastDay);
    return {
      value: { id: price.id },
      events: [eventOf(priceEvents.ended, price.id, { title: price.title, lastDay })],
    };
  },
});
