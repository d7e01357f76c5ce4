import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { ProcedureView } from "@/lib/views/procedure";
import { changeBudgetAction, changeGateAction } from "../../actions";

type Draft = NonNullable<ProcedureView["draft"]>;
type Props = { readonly draft: Draft; readonly mayDraft: boolean };

function Hidden({ draft }: { readonly draft: Draft }) {
  return (
    <>
      <input type="hidden" name="id" value={draft.id} />
      <input type="hidden" name="version" value={draft.version} />
    </>
  );
}

export function BudgetTextForm({ draft, mayDraft }: Props) {
  return (
    <Disclosure summary="Budget inputs, as JSON">
      {mayDraft ? (
        <ActionForm action={changeBudgetAction} shape="wide" label="Budget inputs as text">
          <Hidden draft={draft} />
          <TextArea
            name="budgetText"
            label="The whole of the budget’s inputs"
            hint="A fault is named with its place. The name and revision are the record’s own."
            rows={24}
            defaultValue={draft.budgetText}
            maxLength={200_000}
          />
          <div className="form-actions">
            <SubmitButton>Store the budget inputs</SubmitButton>
          </div>
        </ActionForm>
      ) : (
        <pre>{draft.budgetText}</pre>
      )}
    </Disclosure>
  );
}

export function GateTextForm({ draft, mayDraft }: Props) {
  return (
    <Disclosure summary="What its gate asks differently, as JSON">
      {mayDraft ? (
        <ActionForm action={changeGateAction} shape="wide" label="Gate as text">
          <Hidden draft={draft} />
          <TextArea
            name="policyText"
            label="Only what differs from the gate as it comes"
            hint="Each figure with its source. {} asks nothing differently."
            rows={12}
            defaultValue={draft.policyText}
            maxLength={100_000}
          />
          <div className="form-actions">
            <SubmitButton>Store the gate</SubmitButton>
          </div>
        </ActionForm>
      ) : (
        <pre>{draft.policyText}</pre>
      )}
    </Disclosure>
  );
}
