import type { Tx } from "@/lib/data/in-scope";
import { loadLaboratory } from "@/lib/data/laboratory/laboratory-store";
import { loadCurrency, loadPrices } from "@/lib/data/price/price-store";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { isoDay } from "@/lib/domain/calibration/due";
import { type ComposedPrice, composePrice } from "@/lib/domain/price/compose-price";
import type { OfferParts } from "@/lib/domain/quotation/compose-offer";
import { chargedOrder, type OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { loadOfferedPoints } from "./load-offered-points";

type Known = Omit<OfferParts, "kind" | "number" | "validUntil" | "delivery" | "price"> & {
  readonly price: ComposedPrice;
};

/** All that an offer or an acknowledgment of an order stands on today. */
export const loadOfferParts = async (tx: Tx, order: OfferedOrder, now: Date): Promise<Known> => {
  const on = isoDay(now);
  const laboratory = await loadLaboratory(tx);
  const customer = await tx.customer.findUniqueOrThrow({ where: { id: order.customerId } });
  return {
    on,
    laboratory: laboratory ?? {
      ...{ name: "The laboratory", addressLines: "", contact: "", accreditationText: "", isDemo: false },
    },
    customer,
    order,
    ...(await loadOfferedPoints(tx, order, now)),
    price: composePrice(chargedOrder(order), await loadPrices(tx), on),
    currency: await loadCurrency(tx),
    sha256Hex,
  };
};
