import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { FindForm } from "@/app/_ui/find-form";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { readCustomerQuery } from "@/lib/domain/customer/list-query";
import { countText } from "@/lib/domain/list/page";
import { may } from "@/lib/domain/staff/permissions";
import { customersView } from "@/lib/views/customers";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata = { title: "Customers" };

const columns = [
  { key: "name", header: "Customer" },
  { key: "contact", header: "Contact" },
  { key: "open", header: "In work", align: "number" as const },
  { key: "orders", header: "Orders", align: "number" as const },
  { key: "people", header: "People who sign in", align: "number" as const },
];

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function CustomersPage({ searchParams }: Props) {
  const actor = await requireStaff();
  const query = readCustomerQuery(await searchParams);
  const { rows, next, previous } = await load(customersView(actor, query));
  const record = may(actor.roles, "customer.record") ? (
    <LinkButton href="/customers/new" kind="primary">
      Record a customer
    </LinkButton>
  ) : null;
  return (
    <Page
      title="Customers"
      lead="Whose sensors are calibrated here."
      actions={rows.length > 0 || query.find ? record : null}
    >
      <FindForm path="/customers" name="find" label="Name contains" value={query.find ?? ""} />
      <DataTable
        caption="Customers"
        captionUnseen
        columns={columns}
        rows={rows.map((customer) => ({
          key: customer.id,
          cells: {
            name: <Link href={`/customers/${customer.id}`}>{customer.name}</Link>,
            contact: `${customer.contactName}, ${customer.email}`,
            open: <Link href={`/orders?customer=${customer.id}`}>{customer.open}</Link>,
            orders: (
              <Link href={`/orders?show=all&customer=${customer.id}`}>{countText(customer.orders)}</Link>
            ),
            people: customer.people,
          },
        }))}
        empty={
          query.find ? (
            <EmptyState title={`No customer’s name contains “${query.find}”`}>
              Look for a part of the name as it stands on certificates.
            </EmptyState>
          ) : (
            <EmptyState title="No customers yet" action={record}>
              A customer has a name and an address as they stand on certificates, and somebody the laboratory
              writes to. Orders are recorded for a customer.
            </EmptyState>
          )
        }
      />
      <PageTurns path="/customers" query={query} next={next} previous={previous} of="customers" />
    </Page>
  );
}
