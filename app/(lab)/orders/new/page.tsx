import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { newOrderView } from "@/lib/views/order/order-form";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { recordOrderAction } from "../actions";
import { OrderFields } from "../order-fields";

export const metadata = { title: "Record an order" };

type Props = { readonly searchParams: Promise<{ readonly customer?: string }> };

export default async function NewOrderPage({ searchParams }: Props) {
  const actor = await requirePermission("order.record");
  const { customers, providers } = await load(newOrderView(actor, new Date()));
  const { customer } = await searchParams;
  return (
    <Page
      title="Record an order"
      crumbs={<Breadcrumb trail={[{ label: "Orders", href: "/orders" }]} />}
      lead="What the customer asks for. It binds nobody until it is accepted, and can be amended until then."
    >
      {customers.length === 0 ? (
        <EmptyState
          title="No customers yet"
          action={<LinkButton href="/customers/new">Record a customer</LinkButton>}
        >
          An order is recorded for a customer. Record the customer first.
        </EmptyState>
      ) : (
        <ActionForm action={recordOrderAction} label="Record an order">
          <SelectField
            name="customerId"
            label="Customer"
            prompt="Choose the customer"
            choices={customers.map(({ id, name }) => ({ value: id, label: name }))}
            defaultValue={typeof customer === "string" ? customer : undefined}
          />
          <OrderFields providers={providers} />
          <div className="form-actions">
            <SubmitButton>Record the order</SubmitButton>
          </div>
        </ActionForm>
      )}
    </Page>
  );
}
