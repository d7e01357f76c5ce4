import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import {
  nonconformityKindLabels,
  nonconformityKinds,
  subjectKindLabels,
  subjectKinds,
} from "@/lib/domain/nonconformity/labels";
import { requirePermission } from "@/lib/web/auth";
import { openAction } from "../actions";

export const metadata = { title: "Report nonconforming work" };

type Props = { readonly searchParams: Promise<{ readonly kind?: string; readonly name?: string }> };

export default async function NewNonconformityPage({ searchParams }: Props) {
  await requirePermission("nonconformity.open");
  const { kind, name = "" } = await searchParams;
  const subjectKind = subjectKinds.find((one) => one === kind) ?? "laboratory";
  return (
    <Page
      title="Report nonconforming work"
      crumbs={<Breadcrumb trail={[{ label: "Quality", href: "/quality" }]} />}
      lead="Work that did not go as the procedure or the customer asked, or a complaint. Whoever finds it reports it; somebody else decides what it means."
    >
      <ActionForm action={openAction} label="Report nonconforming work">
        <ChoiceField
          name="kind"
          legend="What it is"
          defaultValue="nonconforming-work"
          choices={nonconformityKinds.map((value) => ({ value, label: nonconformityKindLabels[value] }))}
        />
        <SelectField
          name="subjectKind"
          label="Where it was found"
          defaultValue={subjectKind}
          choices={subjectKinds.map((value) => ({ value, label: subjectKindLabels[value] }))}
        />
        <TextField
          name="subjectName"
          label="Its number, tag or name"
          hint="As it stands on its page; of a customer, the name; of a calibration, the number of its certificate. Empty for the laboratory."
          defaultValue={name}
          maxLength={200}
          optional
        />
        <TextField name="title" label="In one line" maxLength={160} />
        <TextArea
          name="description"
          label="What was found"
          hint="What, when, and how it was noticed. Do not name people."
          rows={5}
        />
        <div className="form-actions">
          <SubmitButton>Report it</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
