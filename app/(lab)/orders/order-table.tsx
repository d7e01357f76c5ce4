import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { TypeLetter } from "@/app/_ui/type-letter";
import { addressOf, changed } from "@/lib/domain/list/query";
import type { OrderQuery } from "@/lib/domain/order/list-query";
import type { OrdersView } from "@/lib/views/order/orders";
import { NoOrders } from "./no-orders";
import { orderFilterLabels, orderMarks } from "./order-marks";

const columns = [
  { key: "number", header: "Order" },
  { key: "customer", header: "Customer" },
  { key: "purchase", header: "Their number" },
  { key: "types", header: "Types" },
  { key: "received", header: "Sensors received", align: "number" as const },
  { key: "issued", header: "Finished", align: "number" as const },
  { key: "recorded", header: "Recorded" },
  { key: "promised", header: "Promised" },
  { key: "state", header: "State" },
];

type Props = { readonly list: OrdersView; readonly query: OrderQuery };

type Order = OrdersView["orders"][number];

function Promised({ order }: { readonly order: Order }) {
  if (order.promisedOn === null) return <span className="quiet">no day</span>;
  return order.isLate ? (
    <StateMark state="out-of-date" label={`Late: ${order.promisedOn}`} />
  ) : (
    order.promisedOn
  );
}

const cellsOf = (order: Order, query: OrderQuery) => ({
  number: <Link href={`/orders/${order.number}`}>{order.number}</Link>,
  customer: (
    <Link href={addressOf("/orders", changed(query, { customer: order.customerId }))}>{order.customer}</Link>
  ),
  purchase: order.purchaseOrder,
  types: (
    <span className="row">
      {order.types.map((letter) => (
        <TypeLetter key={letter} letter={letter} />
      ))}
    </span>
  ),
  received: `${order.received} of ${order.quantity}`,
  issued: `${order.issued} of ${order.quantity}`,
  recorded: <Timestamp at={order.recordedAt} precision="day" />,
  promised: <Promised order={order} />,
  state: (
    <>
      <StateMark {...orderMarks(order.state)} />
      {order.urgency === "express" ? <StateMark state="due" label="Express" /> : null}
    </>
  ),
});

export function OrderTable({ list, query }: Props) {
  return (
    <DataTable
      caption={`Orders: ${orderFilterLabels[list.filter].toLowerCase()}`}
      captionUnseen
      columns={columns}
      rows={list.orders.map((order) => ({
        key: order.number,
        tone: order.isLate ? ("bad" as const) : undefined,
        cells: cellsOf(order, query),
      }))}
      empty={<NoOrders list={list} query={query} />}
    />
  );
}
