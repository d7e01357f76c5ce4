import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { customerView } from "@/lib/views/customer";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { changeCustomerAction } from "../../actions";
import { CustomerFields } from "../../customer-fields";

export const metadata = { title: "Change a customer" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function EditCustomerPage({ params }: Props) {
  const actor = await requirePermission("customer.record");
  const customer = await load(customerView(actor, (await params).id));
  const trail = [
    { label: "Customers", href: "/customers" },
    { label: customer.name, href: `/customers/${customer.id}` },
  ];
  return (
    <Page
      title={`Change ${customer.name}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="Certificates already signed off keep the name and address they were made with."
    >
      <ActionForm action={changeCustomerAction} label="Change the customer">
        <input type="hidden" name="id" value={customer.id} />
        <input type="hidden" name="version" value={customer.version} />
        <CustomerFields customer={customer} />
        <div className="form-actions">
          <SubmitButton>Save</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
