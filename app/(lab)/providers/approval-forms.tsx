import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import { equipmentKinds } from "@/lib/domain/equipment/types";
import type { Provider } from "@/lib/domain/provider/types";
import { approveProviderAction, suspendProviderAction } from "./actions";

type Props = { readonly provider: Provider };

function Which({ provider: { id, version } }: Props) {
  return (
    <>
      <input type="hidden" name="id" value={id} />
      <input type="hidden" name="version" value={version} />
    </>
  );
}

export function ApproveForm({ provider }: Props) {
  const approved = new Map(provider.scope.map(({ kind, range }) => [kind, range]));
  return (
    <ActionForm action={approveProviderAction} label="Approve the provider">
      <Which provider={provider} />
      <DateField
        name="approvedFrom"
        label="Approved from"
        hint="The first day of a calibration that counts."
        defaultValue={provider.approvedFrom ?? undefined}
      />
      <DateField
        name="approvedUntil"
        label="Approved until"
        defaultValue={provider.approvedUntil ?? undefined}
      />
      <FieldGroup legend="For which equipment">
        <FieldError name="scope" />
        {equipmentKinds.map((kind) => (
          <div key={kind}>
            <CheckboxField
              name="scope"
              value={kind}
              label={equipmentKindLabels[kind]}
              defaultChecked={approved.has(kind)}
            />
            <TextField
              name={`range.${kind}`}
              label={`Range, ${equipmentKindLabels[kind].toLowerCase()}`}
              defaultValue={approved.get(kind)}
              optional
            />
          </div>
        ))}
      </FieldGroup>
      <TextArea name="note" label="What the approval rests on" rows={2} defaultValue={provider.note} />
      <div className="form-actions">
        <SubmitButton>{provider.state === "approved" ? "Renew the approval" : "Approve"}</SubmitButton>
      </div>
    </ActionForm>
  );
}

export function SuspendForm({ provider }: Props) {
  return (
    <ActionForm action={suspendProviderAction} label="Suspend the provider">
      <Which provider={provider} />
      <TextField name="reason" label="Why" />
      <div className="form-actions">
        <SubmitButton kind="quiet">Suspend</SubmitButton>
      </div>
    </ActionForm>
  );
}
