import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { orderShipmentsView } from "@/lib/views/shipment/order-shipments";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReturnAddressLine } from "../return-address";
import { ShipForm } from "./ship-form";

export const metadata = { title: "Send sensors back" };

type Props = { readonly params: Promise<{ readonly number: string }> };

export default async function ShipPage({ params }: Props) {
  const actor = await requirePermission("sensor.release");
  const view = await load(orderShipmentsView(actor, (await params).number));
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: view.number, href: `/orders/${view.number}` },
  ];
  const isAnythingHere = view.sensors.some(
    ({ state, hold, away }) => hold === "" && away === "" && (state === "issued" || state === "received"),
  );
  const held = view.sensors.filter(({ hold, state }) => hold !== "" && state !== "collected");
  const away = view.sensors.filter((sensor) => sensor.away !== "" && sensor.state !== "collected");
  return (
    <Page
      title={`Send sensors of ${view.number} back`}
      crumbs={<Breadcrumb trail={trail} />}
      lead={`To ${view.customer}. Finished ones can go while others are still measured. A delivery note is made, and the customer is told by mail.`}
    >
      <Section title="The parcel">
        <p>
          The sensors go back to: <ReturnAddressLine to={view.returnTo} />
        </p>
        {isAnythingHere ? (
          <ShipForm view={view} />
        ) : (
          <EmptyState title="Nothing can leave now">
            Its sensors are being measured, here or elsewhere, were sent back, or have not come yet.
          </EmptyState>
        )}
        {held.length > 0 ? (
          <p>
            On hold, and not offered here: {held.map(({ serial, hold }) => `${serial} (${hold})`).join("; ")}.
          </p>
        ) : null}
        {away.length > 0 ? (
          <p>
            Not in the house, and not offered here: {away.map((one) => `${one.tag} (${one.away})`).join("; ")}
            . Record on its page first that it came back.
          </p>
        ) : null}
      </Section>
      {view.shipments.length > 0 ? (
        <Section title="Sent before">
          <ul className="list">
            {view.shipments.map((parcel) => (
              <li key={parcel.number}>
                {parcel.number}: {parcel.sensors} by {parcel.how}, <Timestamp at={parcel.packedAt} />
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
    </Page>
  );
}
