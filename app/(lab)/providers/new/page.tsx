import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { providerRouteLabels } from "@/lib/domain/provider/labels";
import { providerRoutes } from "@/lib/domain/provider/types";
import { requirePermission } from "@/lib/web/auth";
import { recordProviderAction } from "../actions";

export const metadata = { title: "Record a provider" };

export default async function NewProviderPage() {
  await requirePermission("provider.record");
  return (
    <Page
      title="Record a provider"
      crumbs={<Breadcrumb trail={[{ label: "Providers", href: "/providers" }]} />}
      lead="Its name never changes afterwards, since certificates name it. It counts for nothing until it is approved."
    >
      <ActionForm action={recordProviderAction} label="Record a provider">
        <TextField name="name" label="Name" hint="As it stands on its certificates." />
        <SelectField
          name="route"
          label="What it is"
          prompt="Choose what it is"
          choices={providerRoutes.map((value) => ({ value, label: providerRouteLabels[value] }))}
        />
        <TextField name="accreditation" label="Accreditation number" optional />
        <TextField name="accreditationBody" label="Accredited by" optional />
        <TextArea name="note" label="Note" rows={2} optional />
        <div className="form-actions">
          <SubmitButton>Record the provider</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
