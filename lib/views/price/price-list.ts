import { loadCurrency, loadPrices } from "@/lib/data/price/price-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { priceKeyLabels, pricePerLabels } from "@/lib/domain/price/keys";
import { groupedMoney } from "@/lib/domain/price/money";
import { isPriceInForce, type Price } from "@/lib/domain/price/price";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

const standingOf = (price: Price, today: string): "in-force" | "to-come" | "ended" =>
  isPriceInForce(price, today) ? "in-force" : price.validFrom > today ? "to-come" : "ended";

/** The list of prices: every one there ever was, those in force first. */
export const priceListView = (actor: Actor, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const [today, currency] = [isoDay(now), await loadCurrency(tx)];
    const prices = (await loadPrices(tx)).map((price) => ({
      ...price,
      what: priceKeyLabels[price.key],
      perText: pricePerLabels[price.per],
      money: groupedMoney(price.amount, currency),
      standing: standingOf(price, today),
    }));
    const mayRecord = actor.kind === "staff" && may(actor.roles, "price.record");
    return {
      today,
      currency,
      mayRecord,
      /** While there is no amount that another currency would change. */
      maySetCurrency: mayRecord && prices.length === 0,
      current: prices.filter(({ standing }) => standing !== "ended"),
      ended: prices.filter(({ standing }) => standing === "ended"),
    };
  });

export type PriceListView = Awaited<ReturnType<typeof priceListView>>;
