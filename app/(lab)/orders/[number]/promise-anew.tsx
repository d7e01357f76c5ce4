import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { OrderCommerce } from "@/lib/views/quotation/order-commerce";

type Props = { readonly number: string; readonly view: OrderCommerce };

/** Among the first things of an order: the day the customer was told is not for the work there is now. */
export function PromiseAnew({ number, view }: Props) {
  if (!view.hasPromiseOfBefore) return null;
  return (
    <Notice kind="caution" title="Promise anew">
      The furnace work of this order changed after {view.promisedOn} was promised; that day and its furnace
      hours are still those of before. <Link href={`/orders/${number}/promise`}>Promise a day anew</Link>
      {view.mayPromise ? "." : ": whoever accepts orders does."}
    </Notice>
  );
}
