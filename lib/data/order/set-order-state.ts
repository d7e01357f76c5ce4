import { canOrderBecome, type OrderState } from "@/lib/domain/order/transitions";
import type { Tx } from "../in-scope";
import { demandSaved } from "../versioned";

type Acceptance = { readonly acceptedById: string; readonly acceptedAt: Date };

/** The order's next state, if nobody saved in between. */
export const setOrderState = async (
  tx: Tx,
  order: { readonly id: string; readonly state: OrderState; readonly version: number },
  to: OrderState,
  acceptance?: Acceptance,
): Promise<void> => {
  if (!canOrderBecome(order.state, to)) throw new Error(`No order may go from ${order.state} to ${to}`);
  demandSaved(
    await tx.order.updateMany({
      where: { id: order.id, version: order.version, state: order.state },
      data: { state: to, version: { increment: 1 }, ...acceptance },
    }),
  );
};
