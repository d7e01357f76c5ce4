import type { OrderContract as Contract } from "@/lib/views/order/contract";
import { KeptReviews } from "./kept-reviews";
import { OrderDifferences } from "./order-differences";
import { OrderNotes } from "./order-notes";

/** Everything about the contract that is kept beside the order's lines and terms. */
export function OrderContract({ contract }: { readonly contract: Contract }) {
  return (
    <>
      <OrderDifferences contract={contract} />
      <KeptReviews contract={contract} />
      <OrderNotes contract={contract} />
    </>
  );
}
