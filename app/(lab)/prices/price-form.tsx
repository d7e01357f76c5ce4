import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import { priceKeyLabels, priceKeys, pricePerLabels, pricePers } from "@/lib/domain/price/keys";
import { recordPriceAction } from "./actions";

type Props = { readonly today: string; readonly currency: string };

/** One price from a day on. One of the same kind that stands already ends on the day before. */
export function PriceForm({ today, currency }: Props) {
  return (
    <ActionForm action={recordPriceAction} label="Record a price">
      <SelectField
        name="key"
        label="For"
        choices={priceKeys.map((key) => ({ value: key, label: priceKeyLabels[key] }))}
      />
      <TextField name="title" label="On the offer" hint="The words the customer reads." maxLength={120} />
      <SelectField
        name="per"
        label="Counted by"
        choices={pricePers.map((per) => ({ value: per, label: pricePerLabels[per] }))}
      />
      <SelectField
        name="typeLetter"
        label="Type"
        prompt="Every type without a price of its own"
        optional
        choices={TypeLetter.options.map((letter) => ({ value: letter, label: `Type ${letter}` }))}
      />
      <NumberField name="amount" label="Price" unit={currency} hint="Without tax. Nought is a price too." />
      <DateField
        name="validFrom"
        label="From"
        defaultValue={today}
        hint="The price it follows ends on the day before."
      />
      <div className="form-actions">
        <SubmitButton>Record the price</SubmitButton>
      </div>
    </ActionForm>
  );
}
