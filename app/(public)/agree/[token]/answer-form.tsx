import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { agreeByLinkAction } from "./actions";

type Props = { readonly token: string; readonly contentHash: string; readonly purchaseOrder: string };

/** Agree or decline, with a name. What is agreed to is what stands above: its hash goes with the answer. */
export function AnswerForm({ token, contentHash, purchaseOrder }: Props) {
  return (
    <ActionForm action={agreeByLinkAction} label="Answer the offer" permalink={`/agree/${token}`}>
      <input type="hidden" name="token" value={token} />
      <input type="hidden" name="contentHash" value={contentHash} />
      <ChoiceField
        name="answer"
        legend="Your answer"
        choices={[
          { value: "agreed", label: "We agree: decision rule, method, points and price as above" },
          { value: "declined", label: "We do not agree" },
        ]}
      />
      <TextField name="name" label="Your name" autoComplete="name" maxLength={120} />
      <TextField
        name="purchaseOrder"
        label="Your purchase order"
        optional
        defaultValue={purchaseOrder}
        maxLength={80}
      />
      <TextArea name="remark" label="Remark" optional rows={3} maxLength={2000} />
      <div className="form-actions">
        <SubmitButton pending="Sending…">Send the answer</SubmitButton>
      </div>
    </ActionForm>
  );
}
