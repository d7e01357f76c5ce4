import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DateField } from "@/app/_ui/date-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Tabs } from "@/app/_ui/tabs";
import { TextField } from "@/app/_ui/text-field.client";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import { requirePermission } from "@/lib/web/auth";
import { recordScopeLineAction } from "../actions";
import { CapabilityFields, capabilityForms, readForm } from "./capability-fields";

export const metadata = { title: "Record a line of the scope" };

type Props = { readonly searchParams: Promise<{ readonly form?: string | string[] }> };

const here = "/scope/new";

export default async function NewScopeLinePage({ searchParams }: Props) {
  await requirePermission("scope.record");
  const form = readForm((await searchParams).form);
  return (
    <Page
      title="Record a line of the scope"
      crumbs={<Breadcrumb trail={[{ label: "Scope", href: "/scope" }]} />}
      lead="As it stands in the schedule of accreditation. Runs made from now on are held against it; earlier ones keep what they had."
    >
      <Tabs
        label="How the capability is stated"
        current={`${here}?form=${form}`}
        tabs={capabilityForms.map(([kind, label]) => ({ label, href: `${here}?form=${kind}` }))}
      />
      <ActionForm
        action={recordScopeLineAction}
        label="A line of the scope"
        permalink={`${here}?form=${form}`}
      >
        <SelectField
          name="typeLetter"
          label="Type"
          prompt="Choose the type"
          choices={TypeLetter.options.map((letter) => ({ value: letter, label: `Type ${letter}` }))}
        />
        <NumberField name="fromCelsius" label="From" unit="°C" />
        <NumberField name="toCelsius" label="To" unit="°C" />
        <CapabilityFields form={form} />
        <DateField name="validFrom" label="In force from" />
        <DateField
          name="validUntil"
          label="Last day"
          optional
          hint="Left empty: until it is ended. It can be said once."
        />
        <TextField
          name="source"
          label="Schedule of accreditation"
          hint="Its number, date and line."
          maxLength={400}
        />
        <div className="form-actions">
          <SubmitButton>Record the line</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
