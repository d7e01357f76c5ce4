import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import type { StorageView } from "@/lib/views/custody/storage";
import { DisposeForm } from "./dispose-form";

const columns = [
  { key: "tag", header: "Sensor" },
  { key: "order", header: "Order" },
  { key: "why", header: "Why it goes back" },
  { key: "since", header: "Since" },
  { key: "days", header: "Kept", unit: "days", align: "number" as const },
  { key: "where", header: "Where" },
  { key: "do", header: "Return or dispose" },
];

/** Sensors kept longer than the laboratory says: each goes back, or away on the customer's word. */
export function KeptTable({ storage }: { readonly storage: StorageView }) {
  return (
    <DataTable
      caption="Kept too long"
      captionUnseen
      columns={columns}
      empty={<p className="quiet">No sensor is here longer than that.</p>}
      rows={storage.kept.map((sensor) => ({
        key: sensor.tag,
        tone: "watch",
        cells: {
          tag: <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>,
          order: <Link href={`/orders/${sensor.orderNumber}`}>{sensor.orderNumber}</Link>,
          why: sensor.why,
          since: sensor.since,
          days: sensor.days,
          where: sensor.where,
          do: storage.mayDispose ? (
            <>
              <Link href={`/sensors/${sensor.tag}#hand-back`}>Hand back</Link>
              <Disclosure summary="Dispose of it">
                <DisposeForm tag={sensor.tag} />
              </Disclosure>
            </>
          ) : null,
        },
      }))}
    />
  );
}
