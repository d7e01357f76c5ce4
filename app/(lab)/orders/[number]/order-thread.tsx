import { Thread } from "@/app/_ui/thread";
import { Timestamp } from "@/app/_ui/timestamp";
import type { OrderPage } from "@/lib/views/order/order";

const hrefOf = (order: OrderPage, key: OrderPage["thread"][number]["key"]): string => {
  const here = `/orders/${order.number}`;
  if (key === "ordered") return `${here}#terms`;
  if (key === "accepted") return order.state === "recorded" ? `${here}#review` : `${here}#history`;
  if (key === "received" && order.mayReceive) return `${here}/receive`;
  return `${here}#sensors`;
};

export function OrderThread({ order }: { readonly order: OrderPage }) {
  return (
    <Thread
      label={`Thread of order ${order.number}`}
      beads={order.thread.map(({ key, label, state }) => ({
        label,
        state,
        href: state === "next" ? undefined : hrefOf(order, key),
      }))}
      last={
        order.last ? (
          <>
            {order.last.who} {order.last.sentence}, <Timestamp at={order.last.at} />
          </>
        ) : undefined
      }
      next={`Next: ${order.next}`}
    />
  );
}
