import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { OrderOffers } from "@/lib/views/quotation/order-offers";
import { acknowledgeOrderAction, makeQuotationAction, recordAgreementAction } from "./actions";

export function MakeOfferForm({ view }: { readonly view: OrderOffers }) {
  return (
    <ActionForm action={makeQuotationAction} label="Make the offer">
      <input type="hidden" name="number" value={view.number} />
      <DateField name="validUntil" label="Open until" defaultValue={view.validUntil} />
      <TextField
        name="delivery"
        label="Delivery"
        optional
        hint="Left empty: the promised day, or that it is agreed with the order."
        maxLength={200}
      />
      <div className="form-actions">
        <SubmitButton>Make the offer and mail it</SubmitButton>
      </div>
    </ActionForm>
  );
}

/** What came on paper or by telephone. */
export function RecordAnswerForm({ offer }: { readonly offer: OrderOffers["offers"][number] }) {
  return (
    <Disclosure summary="The answer came another way">
      <ActionForm action={recordAgreementAction} label={`Record the answer to ${offer.number}`}>
        <input type="hidden" name="quotation" value={offer.number} />
        <input type="hidden" name="contentHash" value={offer.contentHash} />
        <ChoiceField
          name="answer"
          legend="The answer"
          choices={[
            { value: "agreed", label: "They agree" },
            { value: "declined", label: "They do not" },
          ]}
        />
        <TextField name="name" label="Who said it" maxLength={120} />
        <TextArea
          name="remark"
          label="How it came"
          hint="By telephone, on paper, by mail of which day."
          rows={2}
          maxLength={2000}
        />
        <TextField name="purchaseOrder" label="Their purchase order" optional maxLength={80} />
        <div className="form-actions">
          <SubmitButton>Keep the answer</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

export function AcknowledgeForm({ number }: { readonly number: string }) {
  return (
    <ActionForm action={acknowledgeOrderAction} label="Acknowledge the order" shape="inline">
      <input type="hidden" name="number" value={number} />
      <SubmitButton kind="quiet">Acknowledge the order and mail it</SubmitButton>
    </ActionForm>
  );
}
