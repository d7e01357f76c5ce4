import { ActionForm } from "@/app/_ui/action-form.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { setCurrencyAction } from "./actions";

/** Asked for while the list is empty; a price once recorded keeps it. */
export function CurrencyForm({ currency }: { readonly currency: string }) {
  return (
    <ActionForm action={setCurrencyAction} label="Currency">
      <TextField
        name="currency"
        label="Currency"
        hint="Three letters, such as EUR (ISO 4217). It stays once the first price is recorded."
        defaultValue={currency}
        maxLength={3}
      />
      <div className="form-actions">
        <SubmitButton kind="quiet">Set the currency</SubmitButton>
      </div>
    </ActionForm>
  );
}
