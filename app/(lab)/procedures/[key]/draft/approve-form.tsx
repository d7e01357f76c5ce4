import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { ProcedureView } from "@/lib/views/procedure";
import { makeCurrentAction } from "../../actions";

type Props = { readonly view: ProcedureView; readonly draft: NonNullable<ProcedureView["draft"]> };

/** Offered to a second person only, and only once it says what it changes and how it was verified. */
export function ApproveForm({ view, draft }: Props) {
  if (!view.mayApprove) return <p className="quiet">A signatory or the quality manager makes it current.</p>;
  if (view.isOwnDraft)
    return <p>You drafted it: another signatory or quality manager reads it and makes it current.</p>;
  if (draft.change === "" || draft.verification === "")
    return <p>It waits for what it changes and for its verification.</p>;
  return (
    <ActionForm action={makeCurrentAction} label="Make it current">
      <input type="hidden" name="id" value={draft.id} />
      <input type="hidden" name="version" value={draft.version} />
      <FieldError name="verification" />
      <FieldError name="change" />
      <p>
        {view.current
          ? `Revision ${view.current.revision} is withdrawn in the same moment; runs made by it keep it.`
          : "Runs can follow it from then on."}{" "}
        Its content is fixed then.
      </p>
      <div className="form-actions">
        <SubmitButton>Make revision {draft.revision} current</SubmitButton>
      </div>
    </ActionForm>
  );
}
