import { LinkButton } from "@/app/_ui/link-button";
import type { OrderPage } from "@/lib/views/order/order";
import { PrintLabels } from "../../sensors/print-labels";

/** What can be done with the order now, by whoever looks at it. */
export function OrderActions({ order }: { readonly order: OrderPage }) {
  const here = `/orders/${order.number}`;
  return (
    <>
      {order.mayTakeOver ? (
        <LinkButton href={`${here}/amend`} kind="primary">
          Take the request over
        </LinkButton>
      ) : null}
      {order.mayAmend ? <LinkButton href={`${here}/amend`}>Amend</LinkButton> : null}
      {order.mayChange ? <LinkButton href={`${here}/change`}>Change</LinkButton> : null}
      {order.mayPrintLabels ? <PrintLabels order={order.number} label="Print labels" /> : null}
      {order.mayReceive ? (
        <LinkButton href={`${here}/receive`} kind="primary">
          Take sensors in
        </LinkButton>
      ) : null}
    </>
  );
}
