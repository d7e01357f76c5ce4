import { ActionForm } from "@/app/_ui/action-form.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { RunResultsView } from "@/lib/views/run/run-results";
import { evaluateRunAction, submitRunAction } from "../../actions";

export function EvaluateForm({ view }: { readonly view: RunResultsView }) {
  const isCurrent = view.head.progress.evaluation === "current";
  return (
    <ActionForm action={evaluateRunAction} shape="inline" label="Evaluate the run">
      <input type="hidden" name="run" value={view.head.number} />
      <SubmitButton kind={isCurrent ? "quiet" : "primary"} pending="Evaluating…">
        {view.evaluation ? "Evaluate again" : "Evaluate the run"}
      </SubmitButton>
    </ActionForm>
  );
}

export function SubmitForm({ view }: { readonly view: RunResultsView }) {
  return (
    <ActionForm action={submitRunAction} label="Submit for review">
      <input type="hidden" name="run" value={view.head.number} />
      <input type="hidden" name="version" value={view.head.version} />
      {view.missingTips.length > 0 ? (
        <TextArea
          name="tipCheckReason"
          label={`Why the tips in place ${view.missingTips.join(", ")} were not all warmed`}
          hint="Without the check, two channels of one type may be swapped unseen. The signatory reads this."
          rows={2}
          maxLength={600}
        />
      ) : null}
      <div className="form-actions">
        <SubmitButton>Submit for review</SubmitButton>
      </div>
    </ActionForm>
  );
}
