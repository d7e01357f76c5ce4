import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";

type Waiting = { readonly number: string; readonly customer: string } & (
  | { readonly kind: "priced"; readonly rows: number; readonly amount: string }
  | { readonly kind: "unpriced"; readonly missing: readonly string[] }
);

const stateOf = (one: Waiting) =>
  one.kind === "priced" ? (
    "Can be handed over"
  ) : (
    <>
      Stays here, no price: {one.missing.join("; ")}. <Link href="/prices#record">Record it in the list</Link>
    </>
  );

/** Orders of which something is finished and not handed over, each with what it comes to or with what has no price. */
export function WaitingTable({
  currency,
  rows,
}: {
  readonly currency: string;
  readonly rows: readonly Waiting[];
}) {
  return (
    <DataTable
      caption="Orders to hand over"
      captionUnseen
      columns={[
        { key: "order", header: "Order" },
        { key: "customer", header: "Customer" },
        { key: "rows", header: "Rows", align: "number" },
        { key: "amount", header: "Amount", unit: currency, align: "number" },
        { key: "state", header: "State" },
      ]}
      rows={rows.map((one) => ({
        key: one.number,
        cells: {
          order: <Link href={`/orders/${one.number}`}>{one.number}</Link>,
          customer: one.customer,
          rows: one.kind === "priced" ? one.rows : "",
          amount: one.kind === "priced" ? one.amount : "",
          state: stateOf(one),
        },
      }))}
      empty={<EmptyState title="Nothing waits">What gets its certificate next stands here.</EmptyState>}
    />
  );
}
