import Link from "next/link";
import { Thread } from "@/app/_ui/thread";
import { Timestamp } from "@/app/_ui/timestamp";
import type { PortalOrderSummary } from "@/lib/views/portal-orders";

/** Orders one below the other, each with its thread. */
export function OrderList({ orders }: { readonly orders: readonly PortalOrderSummary[] }) {
  return (
    <ul className="stack plain-list">
      {orders.map((order) => (
        <li key={order.number}>
          <h3>
            <Link href={`/portal/orders/${order.number}`}>{order.number}</Link>
          </h3>
          <p className="quiet">
            {order.purchaseOrder ? `Your reference ${order.purchaseOrder}. ` : ""}
            {order.quantity} {order.quantity === 1 ? "sensor" : "sensors"}, ordered{" "}
            <Timestamp at={order.recordedAt} precision="day" />
            {order.certified > 0 ? `, ${order.certified} certified` : ""}.
          </p>
          <Thread
            label={`Progress of order ${order.number}`}
            beads={order.progress.steps}
            next={order.progress.next}
          />
        </li>
      ))}
    </ul>
  );
}
