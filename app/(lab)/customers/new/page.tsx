import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { requirePermission } from "@/lib/web/auth";
import { recordCustomerAction } from "../actions";
import { CustomerFields } from "../customer-fields";

export const metadata = { title: "Record a customer" };

export default async function NewCustomerPage() {
  await requirePermission("customer.record");
  return (
    <Page
      title="Record a customer"
      crumbs={<Breadcrumb trail={[{ label: "Customers", href: "/customers" }]} />}
    >
      <ActionForm action={recordCustomerAction} label="Record a customer">
        <CustomerFields />
        <div className="form-actions">
          <SubmitButton>Record the customer</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
