import { listInvoicingFiles } from "@/lib/data/invoicing/invoicing-store";
import { loadChargeable } from "@/lib/data/invoicing/load-chargeable";
import { loadCurrency } from "@/lib/data/price/price-store";
import { groupedMoney } from "@/lib/domain/price/money";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

const shown = 100;

/** What can be handed to invoicing, what cannot for want of a price, and the files that were made. */
export const invoicingView = (actor: Actor, now: Date) =>
  answer(actor, "invoicing.record", async (tx) => {
    const currency = await loadCurrency(tx);
    const found = await loadChargeable(tx, now);
    return {
      currency,
      waiting: found.flatMap((one) =>
        one.kind === "priced" && one.charges.length > 0
          ? [
              {
                ...{ number: one.number, customer: one.customer, rows: one.charges.length },
                amount: groupedMoney(
                  one.charges.reduce((sum, { amount }) => sum + amount, 0),
                  currency,
                ),
              },
            ]
          : [],
      ),
      unpriced: found.flatMap((one) =>
        one.kind === "unpriced" ? [{ number: one.number, missing: one.missing }] : [],
      ),
      files: (await listInvoicingFiles(tx, shown)).map(({ madeAt, ...file }) => ({
        ...file,
        madeAt: madeAt.toISOString(),
      })),
    };
  });
