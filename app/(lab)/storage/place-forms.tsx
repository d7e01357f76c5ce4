import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { StorageView } from "@/lib/views/custody/storage";
import { changePlaceAction, recordPlaceAction, setRetentionAction } from "./actions";

const PlaceFields = ({
  name = "",
  conditions = "",
}: {
  readonly name?: string;
  readonly conditions?: string;
}) => (
  <>
    <TextField name="name" label="Name" defaultValue={name} maxLength={120} />
    <TextField
      name="conditions"
      label="Conditions"
      hint="What it is like there: “dry, below 40 % relative humidity”."
      defaultValue={conditions}
      maxLength={200}
      optional
    />
  </>
);

export function RecordPlaceForm() {
  return (
    <ActionForm action={recordPlaceAction} label="Record a storage place">
      <TextField name="code" label="Code" hint="As on its label; it stays." maxLength={20} />
      <PlaceFields />
      <div className="form-actions">
        <SubmitButton kind="quiet">Record the place</SubmitButton>
      </div>
    </ActionForm>
  );
}

export function ChangePlaceForm({ place }: { readonly place: StorageView["places"][number] }) {
  return (
    <ActionForm action={changePlaceAction} label={`Change ${place.code}`}>
      <input type="hidden" name="id" value={place.id} />
      <input type="hidden" name="version" value={place.version} />
      <PlaceFields name={place.name} conditions={place.conditions} />
      <CheckboxField name="active" label="In use" defaultChecked={place.active} />
      <div className="form-actions">
        <SubmitButton kind="quiet">Change {place.code}</SubmitButton>
      </div>
    </ActionForm>
  );
}

export function RetentionForm({ retention }: { readonly retention: StorageView["retention"] }) {
  return (
    <ActionForm action={setRetentionAction} label="How long sensors are kept">
      <input type="hidden" name="version" value={retention.version} />
      <NumberField
        name="days"
        label="Days after they could go back"
        unit="days"
        defaultValue={retention.days}
      />
      <div className="form-actions">
        <SubmitButton kind="quiet">Set</SubmitButton>
      </div>
    </ActionForm>
  );
}
