import { listInvoicingFiles } from "@/lib/data/invoicing/invoicing-store";
import { type Chargeable, loadChargeablePage } from "@/lib/data/invoicing/load-chargeable";
import { loadCurrency } from "@/lib/data/price/price-store";
import { countUninvoiced } from "@/lib/data/sql/uninvoiced-orders";
import type { InvoicingQuery } from "@/lib/domain/invoicing/list-query";
import { turnOf } from "@/lib/domain/list/page";
import { groupedMoney } from "@/lib/domain/price/money";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

const shown = 100;

const rowOf = (one: Chargeable, currency: string) => {
  const { number, customer } = one;
  if (one.kind === "unpriced") return { kind: one.kind, number, customer, missing: one.missing };
  const sum = one.charges.reduce((total, { amount }) => total + amount, 0);
  return {
    kind: one.kind,
    number,
    customer,
    rows: one.charges.length,
    amount: groupedMoney(sum, currency),
  };
};

/** One page of the orders that can be handed to invoicing, or cannot for want of a price; and the files that were made. */
export const invoicingView = (actor: Actor, now: Date, query: InvoicingQuery = {}) =>
  answer(actor, "invoicing.record", async (tx) => {
    const currency = await loadCurrency(tx);
    const page = await loadChargeablePage(tx, turnOf(query), now);
    return {
      currency,
      waiting: page.rows.map((one) => rowOf(one, currency)),
      count: await countUninvoiced(tx),
      next: page.next,
      previous: page.previous,
      files: (await listInvoicingFiles(tx, shown)).map(({ madeAt, ...file }) => ({
        ...file,
        madeAt: madeAt.toISOString(),
      })),
    };
  });
