import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { FormState } from "@/lib/web/form-state";

type Props = {
  readonly id: string;
  readonly action: (state: FormState, data: FormData) => Promise<FormState>;
  /** "the characterisation of 2026-03-10". */
  readonly what: string;
  readonly acceptHint: string;
};

/** A second person's word: accepted, or returned with what is to be done. */
export function DecisionForm({ id, action, what, acceptHint }: Props) {
  return (
    <ActionForm action={action} label={`Decide on ${what}`}>
      <input type="hidden" name="id" value={id} />
      <ChoiceField
        name="decision"
        legend={`Decide on ${what}`}
        choices={[
          { value: "accepted", label: "Accept", hint: acceptHint },
          { value: "returned", label: "Return", hint: "It counts for nothing; say what is to be done." },
        ]}
      />
      <TextArea name="reason" label="Reason" hint="Asked for where it is returned." rows={2} optional />
      <div className="form-actions">
        <SubmitButton>Record the decision</SubmitButton>
      </div>
    </ActionForm>
  );
}
