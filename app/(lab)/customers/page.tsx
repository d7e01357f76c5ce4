import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { may } from "@/lib/domain/staff/permissions";
import { customersView } from "@/lib/views/customers";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata = { title: "Customers" };

const columns = [
  { key: "name", header: "Customer" },
  { key: "contact", header: "Contact" },
  { key: "orders", header: "Orders", align: "number" as const },
  { key: "people", header: "People who sign in", align: "number" as const },
];

export default async function CustomersPage() {
  const actor = await requireStaff();
  const customers = await load(customersView(actor));
  const record = may(actor.roles, "customer.record") ? (
    <LinkButton href="/customers/new" kind="primary">
      Record a customer
    </LinkButton>
  ) : null;
  return (
    <Page
      title="Customers"
      lead="Whose sensors are calibrated here."
      actions={customers.length > 0 ? record : null}
    >
      <DataTable
        caption="Customers"
        captionUnseen
        columns={columns}
        rows={customers.map((customer) => ({
          key: customer.id,
          cells: {
            name: <Link href={`/customers/${customer.id}`}>{customer.name}</Link>,
            contact: `${customer.contactName}, ${customer.email}`,
            orders: customer.orders,
            people: customer.people,
          },
        }))}
        empty={
          <EmptyState title="No customers yet" action={record}>
            A customer has a name and an address as they stand on certificates, and somebody the laboratory
            writes to. Orders are recorded for a customer.
          </EmptyState>
        }
      />
    </Page>
  );
}
