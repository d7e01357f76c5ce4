import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import type { BoardView } from "@/lib/views/board";

/** Late and at risk, the nearest day first, with why. */
export function DoubtfulTable({ orders }: { readonly orders: BoardView["doubtful"] }) {
  return (
    <DataTable
      caption="Orders that are late or at risk"
      captionUnseen
      columns={[
        { key: "order", header: "Order" },
        { key: "customer", header: "Customer" },
        { key: "promised", header: "Promised" },
        { key: "outlook", header: "Outlook" },
        { key: "why", header: "Why" },
      ]}
      rows={orders.map((order) => ({
        key: order.number,
        tone: order.outlook.kind === "late" ? ("bad" as const) : ("watch" as const),
        cells: {
          order: <Link href={`/orders/${order.number}`}>{order.number}</Link>,
          customer: order.customer,
          promised: order.promisedOn,
          outlook:
            order.outlook.kind === "late" ? (
              <StateMark state="out-of-date" label="Late" />
            ) : (
              <StateMark state="due" label="At risk" />
            ),
          why: order.outlook.reasons.join("; "),
        },
      }))}
    />
  );
}

/** What each furnace does now, and what is planned in it. */
export function FurnaceTable({ furnaces }: { readonly furnaces: BoardView["furnaces"] }) {
  return (
    <DataTable
      caption="Furnaces now, and their queue"
      captionUnseen
      columns={[
        { key: "furnace", header: "Furnace" },
        { key: "now", header: "Now" },
        { key: "queue", header: "Planned, in order" },
      ]}
      rows={furnaces.map(({ id, tag, name, hot, queue }) => ({
        key: id,
        cells: {
          furnace: (
            <>
              <Link href={`/furnaces/${id}`}>{tag}</Link> <span className="quiet">{name}</span>
            </>
          ),
          now: hot ? (
            <>
              <StateMark state="active" label="Hot" /> <Link href={hot.href}>{hot.number}</Link>{" "}
              <span className="quiet">{hot.what}</span>
            </>
          ) : (
            <StateMark state="waiting" label="Not hot" tone="rest" />
          ),
          queue:
            queue.length === 0 ? (
              <span className="quiet">none</span>
            ) : (
              <ul className="plain-list">
                {queue.map((one) => (
                  <li key={one.number}>
                    <Link href={one.href}>{one.number}</Link> <span className="quiet">{one.what}</span>
                  </li>
                ))}
              </ul>
            ),
        },
      }))}
    />
  );
}
