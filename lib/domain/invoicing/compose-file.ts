import { plainMoney } from "../price/money";
import type { Charge } from "./charges";
import type { Cell } from "./csv";

export type InvoicedOrder = {
  readonly number: string;
  readonly customer: string;
  readonly purchaseOrder: string;
  readonly address: string;
  readonly charges: readonly Charge[];
};

const head = [
  ...["file", "date", "order", "purchase order", "customer", "invoice address", "order line", "what", "key"],
  ...["tag", "serial", "quantity", "price", "amount", "currency"],
];

/** The rows of a hand-over file, a chargeable thing each. */
export const composeInvoicingRows = (
  file: { readonly number: string; readonly on: string; readonly currency: string },
  orders: readonly InvoicedOrder[],
): readonly (readonly Cell[])[] => {
  const money = (minor: number): Cell => ({ number: plainMoney(minor, file.currency) });
  return [
    head,
    ...orders.flatMap((order) =>
      order.charges.map((charge): readonly Cell[] => [
        ...[file.number, file.on, order.number, order.purchaseOrder, order.customer],
        order.address.replaceAll("\n", ", "),
        charge.position === null ? "" : { number: String(charge.position) },
        ...[charge.title, charge.key, charge.tag, charge.serial],
        { number: String(charge.quantity) },
        money(charge.unitAmount),
        money(charge.amount),
        file.currency,
      ]),
    ),
  ];
};
