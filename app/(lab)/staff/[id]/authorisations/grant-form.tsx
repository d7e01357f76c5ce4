import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { activities, activityLabels, scopeLabels, scopes } from "@/lib/domain/authorisation/authorisation";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import type { AuthorisationsPage } from "@/lib/views/authorisations";
import { grantAuthorisationAction } from "./actions";

/** What it is for, how far it reaches, and how long. */
export function GrantForm({ page }: { readonly page: AuthorisationsPage }) {
  return (
    <ActionForm action={grantAuthorisationAction} label="Grant an authorisation">
      <input type="hidden" name="personId" value={page.personId} />
      <ChoiceField
        name="activity"
        legend="What for"
        choices={activities.map((value) => ({ value, label: activityLabels[value] }))}
        defaultValue="sign-off"
      />
      <FieldGroup legend="Types of thermocouple" hint="None ticked: every type.">
        <div className="fields">
          {TypeLetter.options.map((letter) => (
            <CheckboxField key={letter} name="typeLetters" value={letter} label={`Type ${letter}`} />
          ))}
        </div>
        <FieldError name="typeLetters" />
      </FieldGroup>
      <FieldGroup legend="Range of the results" columns>
        <NumberField name="fromCelsius" label="From" unit="°C" />
        <NumberField name="toCelsius" label="To" unit="°C" />
      </FieldGroup>
      <ChoiceField
        name="scope"
        legend="The laboratory’s scope of accreditation"
        choices={scopes.map((value) => ({ value, label: scopeLabels[value] }))}
        defaultValue="inside"
      />
      <SelectField
        name="procedureId"
        label="Procedure"
        prompt="Every procedure"
        choices={page.procedures}
        optional
      />
      <FieldGroup legend="Days" hint="By UTC, as on certificates." columns>
        <DateField name="validFrom" label="First day" defaultValue={page.today} />
        <DateField name="validUntil" label="Last day" hint="Empty: until it is withdrawn." optional />
      </FieldGroup>
      <TextArea
        name="basis"
        label="On what grounds"
        hint="Training, monitoring, comparisons, with their days: an assessor reads this."
        rows={3}
      />
      <div className="form-actions">
        <SubmitButton>Grant it</SubmitButton>
      </div>
    </ActionForm>
  );
}
