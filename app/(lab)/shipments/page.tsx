import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { shipmentListView } from "@/lib/views/shipment/shipment-list";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata = { title: "Shipments" };

export default async function ShipmentsPage() {
  const view = await load(shipmentListView(await requireStaff()));
  return (
    <Page title="Shipments" lead="What can be sent back, and what was.">
      <Section title="To be sent back">
        <DataTable
          caption="Orders of which sensors are to be handed back"
          captionUnseen
          columns={[
            { key: "order", header: "Order" },
            { key: "customer", header: "Customer" },
            { key: "finished", header: "Finished", align: "number" },
            { key: "unmeasured", header: "Unmeasured", align: "number" },
          ]}
          rows={view.ready.map(({ number, customer, sensors, unmeasured }) => ({
            key: number,
            cells: {
              order: <Link href={`/orders/${number}/ship`}>{number}</Link>,
              customer,
              finished: sensors - unmeasured,
              unmeasured,
            },
          }))}
          empty={
            <EmptyState title="Nothing waits to be sent">
              Finished sensors stand here, and those that go back unmeasured.
            </EmptyState>
          }
        />
      </Section>
      <Section title="Sent" wide>
        <DataTable
          caption="Parcels"
          captionUnseen
          columns={[
            { key: "number", header: "Delivery note" },
            { key: "order", header: "Order" },
            { key: "customer", header: "Customer" },
            { key: "sensors", header: "Sensors", align: "number" },
            { key: "how", header: "How" },
            { key: "at", header: "When" },
          ]}
          rows={view.shipments.map((parcel) => ({
            key: parcel.number,
            cells: {
              number: (
                <a href={`/api/order-documents/${parcel.paperId}`} download>
                  {parcel.number}
                </a>
              ),
              order: <Link href={`/orders/${parcel.order}`}>{parcel.order}</Link>,
              customer: parcel.customer,
              sensors: parcel.sensors,
              how: parcel.how,
              at: <Timestamp at={parcel.packedAt} />,
            },
          }))}
          empty={<EmptyState title="Nothing was sent yet">Parcels stand here as they leave.</EmptyState>}
        />
      </Section>
    </Page>
  );
}
