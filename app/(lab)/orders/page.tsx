import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { Tabs } from "@/app/_ui/tabs";
import { Timestamp } from "@/app/_ui/timestamp";
import { TypeLetter } from "@/app/_ui/type-letter";
import { type OrderFilter, orderFilters, ordersView } from "@/lib/views/order/orders";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { orderFilterLabels, orderMarks } from "./order-marks";

export const metadata = { title: "Orders" };

const columns = [
  { key: "number", header: "Order" },
  { key: "customer", header: "Customer" },
  { key: "purchase", header: "Their number" },
  { key: "types", header: "Types" },
  { key: "received", header: "Sensors received", align: "number" as const },
  { key: "issued", header: "Finished", align: "number" as const },
  { key: "recorded", header: "Recorded" },
  { key: "state", header: "State" },
];

type Props = { readonly searchParams: Promise<{ readonly show?: string }> };

const hrefOf = (filter: OrderFilter): string => (filter === "open" ? "/orders" : `/orders?show=${filter}`);

export default async function OrdersPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const { show } = await searchParams;
  const filter = orderFilters.find((name) => name === show) ?? "open";
  const list = await load(ordersView(actor, filter));
  const record = list.mayRecord ? (
    <LinkButton href="/orders/new" kind="primary">
      Record an order
    </LinkButton>
  ) : null;
  return (
    <Page title="Orders" actions={record}>
      <Tabs
        label="Orders by state"
        current={hrefOf(filter)}
        tabs={list.filters.map(({ name, count }) => ({
          label: orderFilterLabels[name],
          href: hrefOf(name),
          count,
        }))}
      />
      <DataTable
        caption={`Orders: ${orderFilterLabels[filter].toLowerCase()}`}
        captionUnseen
        columns={columns}
        rows={list.orders.map((order) => ({
          key: order.number,
          cells: {
            number: <Link href={`/orders/${order.number}`}>{order.number}</Link>,
            customer: order.customer,
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
            state: <StateMark {...orderMarks(order.state)} />,
          },
        }))}
        empty={
          <EmptyState
            title={filter === "all" || filter === "open" ? "No orders here" : `No ${filter} orders`}
          >
            An order says whose sensors are to be calibrated, at which temperatures, and what is to be stated
            about them. It is recorded, accepted after its contract review, and complete once each of its
            sensors has its certificate.
          </EmptyState>
        }
      />
      {list.leftOut > 0 ? <p className="quiet">{list.leftOut} older orders are not listed here.</p> : null}
    </Page>
  );
}
