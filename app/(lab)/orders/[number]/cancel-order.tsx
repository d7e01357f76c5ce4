import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { cancelOrderAction } from "../actions";

/** Out of the way, because it ends the order; its record stays. */
export function CancelOrder({ number }: { readonly number: string }) {
  return (
    <Disclosure summary="Cancel this order">
      <ActionForm action={cancelOrderAction} label="Cancel the order">
        <input type="hidden" name="number" value={number} />
        <TextField
          name="reason"
          label="Why"
          hint="The customer is told by mail, and reads this in the portal; it stands in the audit log. Do not name people."
          maxLength={400}
        />
        <div className="form-actions">
          <SubmitButton kind="danger" pending="Cancelling…">
            Cancel order {number}
          </SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}
