import { ActionForm } from "@/app/_ui/action-form.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { disposeSensorAction } from "./actions";

/** Only on the customer's word, which is kept: what was disposed of does not come back. */
export function DisposeForm({
  tag,
  instruction = "",
}: {
  readonly tag: string;
  readonly instruction?: string;
}) {
  return (
    <ActionForm action={disposeSensorAction} label={`Dispose of ${tag}`}>
      <input type="hidden" name="tag" value={tag} />
      <TextArea
        name="instruction"
        label="The customer’s instruction"
        hint="When and how it came: “letter of 2026-03-03”. It stands in the log."
        defaultValue={instruction}
        rows={2}
        maxLength={400}
      />
      <div className="form-actions">
        <SubmitButton kind="danger">Dispose of {tag}</SubmitButton>
      </div>
    </ActionForm>
  );
}
