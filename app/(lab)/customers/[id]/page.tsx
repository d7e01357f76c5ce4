import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { FieldList } from "@/app/_ui/field-list";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { customerView } from "@/lib/views/customer";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { orderMarks } from "../../orders/order-marks";
import { ReportLine } from "../../quality/report-line";

export const metadata = { title: "Customer" };

type Props = { readonly params: Promise<{ readonly id: string }> };

const orderColumns = [
  { key: "number", header: "Order" },
  { key: "purchase", header: "Their number" },
  { key: "recorded", header: "Recorded" },
  { key: "state", header: "State" },
];

export default async function CustomerPage({ params }: Props) {
  const actor = await requireStaff();
  const customer = await load(customerView(actor, (await params).id));
  return (
    <Page
      title={customer.name}
      crumbs={<Breadcrumb trail={[{ label: "Customers", href: "/customers" }]} />}
      actions={
        customer.mayChange ? (
          <LinkButton href={`/customers/${customer.id}/edit`}>Change the record</LinkButton>
        ) : null
      }
    >
      <Section title="Record">
        <FieldList
          items={[
            { label: "Postal address", value: <span className="lines">{customer.addressLines}</span> },
            { label: "Contact", value: customer.contactName },
            { label: "E-mail address", value: customer.email },
            { label: "Customer since", value: <Timestamp at={customer.createdAt} precision="day" /> },
          ]}
        />
      </Section>
      <Section title="Orders">
        <DataTable
          caption={`Orders of ${customer.name}`}
          captionUnseen
          columns={orderColumns}
          rows={customer.orders.map((order) => ({
            key: order.number,
            cells: {
              number: <Link href={`/orders/${order.number}`}>{order.number}</Link>,
              purchase: order.purchaseOrder ?? "",
              recorded: <Timestamp at={order.recordedAt} precision="day" />,
              state: <StateMark {...orderMarks(order.state)} />,
            },
          }))}
          empty={<p className="quiet">No order yet. Orders are recorded under Orders.</p>}
        />
      </Section>
      <Section title="People who sign in" note="They see only this customer’s orders.">
        {customer.people.length === 0 ? (
          <p className="quiet">Nobody yet. A quality manager adds people under Staff.</p>
        ) : (
          <ul className="list">
            {customer.people.map((person) => (
              <li key={person.id}>
                {person.name}, {person.email}
                {person.active ? "" : ", deactivated"}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <ReportLine actor={actor} kind="customer" name={customer.name} />
    </Page>
  );
}
