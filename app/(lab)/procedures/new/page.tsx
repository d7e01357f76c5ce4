import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { proceduresView } from "@/lib/views/procedures";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { recordProcedureAction } from "../actions";

export const metadata = { title: "Draft a procedure" };

export default async function NewProcedurePage() {
  const actor = await requirePermission("procedure.draft");
  const { procedures } = await load(proceduresView(actor));
  return (
    <Page
      title="Draft a procedure"
      crumbs={<Breadcrumb trail={[{ label: "Procedures", href: "/procedures" }]} />}
      lead="It begins as a copy of another’s current revision. No run can follow it before it is verified and a second person makes it current."
    >
      <ActionForm action={recordProcedureAction} label="Draft a procedure">
        <TextField name="title" label="Title" hint="As it stands on records." maxLength={120} />
        <TextField
          name="key"
          label="Short name"
          hint="For addresses and files, such as tube-furnace. It stays."
          maxLength={60}
        />
        <SelectField
          name="copyOf"
          label="Copy of"
          choices={procedures.flatMap(({ key, title, current }) =>
            current ? [{ value: key, label: `${title}, revision ${current.revision}` }] : [],
          )}
        />
        <div className="form-actions">
          <SubmitButton>Draft it</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
