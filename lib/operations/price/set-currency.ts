import { z } from "zod";
import { loadCurrency, loadPrices, saveCurrency } from "@/lib/data/price/price-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Currency, decideCurrency } from "@/lib/domain/price/currency";
import { priceEvents } from "@/lib/domain/price/events";
import { demand } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** What the laboratory reckons in; said before its first price. */
export const setCurrency = defineOperation({
  name: "price/set-currency",
  permission: "price.record",
  input: z.strictObject({ currency: Currency }),
  perform: async ({ tx }, { currency: asked }) => {
    await lockName(tx, "price list");
    const currency = await loadCurrency(tx);
    const hasAmounts = (await loadPrices(tx)).length > 0;
    demand(decideCurrency({ currency, asked, hasAmounts }));
    await saveCurrency(tx, asked);
    const payload = { currency: asked, before: currency };
    return { value: { currency: asked }, events: [eventOf(priceEvents.currencySet, "laboratory", payload)] };
  },
});
