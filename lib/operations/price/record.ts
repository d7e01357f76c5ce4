import { endPrice, insertPrice, loadCurrency, loadPrices } from "@/lib/data/price/price-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { decideNewPrice } from "@/lib/domain/price/decide-price";
import { priceEvents } from "@/lib/domain/price/events";
import { parseMoney } from "@/lib/domain/price/money";
import { RecordPriceInput } from "@/lib/domain/price/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A price of the list, from a day on; the one it follows ends on the day before. */
export const recordPrice = defineOperation({
  name: "price/record",
  permission: "price.record",
  input: RecordPriceInput,
  perform: async ({ actor, now, tx }, input) => {
    await lockName(tx, "price list");
    const currency = await loadCurrency(tx);
    const amount = demand(parseMoney(input.amount, currency));
    const { ends } = demand(decideNewPrice(input, await loadPrices(tx), isoDay(now)));
    if (ends) await endPrice(tx, ends.id, ends.lastDay);
    const { id } = await insertPrice(
      tx,
      { ...input, amount },
      { recordedById: personIdOf(actor), recordedAt: now },
    );
    return {
      value: { id },
      events: [
        eventOf(priceEvents.recorded, id, {
          ...input,
          amount,
          currency,
          ...(ends ? { endsEarlierWith: ends.lastDay } : {}),
        }),
      ],
    };
  },
});
