import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldList } from "@/app/_ui/field-list";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { ProcedureView } from "@/lib/views/procedure";
import { describeDraftAction } from "../../actions";

type Props = { readonly draft: NonNullable<ProcedureView["draft"]>; readonly mayDraft: boolean };

/** ISO/IEC 17025:2017, 7.2.1.5: what shows that the method performs as claimed, before it is used. */
export function VerificationForm({ draft, mayDraft }: Props) {
  if (!mayDraft)
    return (
      <FieldList
        items={[
          { label: "What changes", value: draft.change },
          { label: "Verification", value: draft.verification },
        ]}
      />
    );
  return (
    <ActionForm action={describeDraftAction} label="Change and verification">
      <input type="hidden" name="id" value={draft.id} />
      <input type="hidden" name="version" value={draft.version} />
      <TextArea
        name="change"
        label="What this revision changes, and why"
        rows={3}
        defaultValue={draft.change}
        maxLength={2000}
      />
      <TextArea
        name="verification"
        label="Verification"
        hint="What shows that it performs as claimed: what was measured, when, with what result (ISO/IEC 17025:2017, 7.2.1.5)."
        rows={5}
        defaultValue={draft.verification}
        maxLength={4000}
      />
      <div className="form-actions">
        <SubmitButton>Store</SubmitButton>
      </div>
    </ActionForm>
  );
}
