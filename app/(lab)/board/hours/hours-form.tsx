import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { dayNames, type PromisePolicy } from "@/lib/domain/promise/policy";
import { changePromisePolicyAction } from "./actions";

type Props = { readonly policy: PromisePolicy; readonly version: number };
type NumberName = Exclude<keyof PromisePolicy, "workingDays">;

/** Names, words and units of one row of fields. */
function Numbers({
  policy,
  fields,
}: {
  readonly policy: PromisePolicy;
  readonly fields: readonly (readonly [name: NumberName, label: string, unit: string])[];
}) {
  return (
    <div className="fields">
      {fields.map(([name, label, unit]) => (
        <NumberField key={name} name={name} label={label} unit={unit} defaultValue={policy[name]} />
      ))}
    </div>
  );
}

/** What the quality manager sets; everybody else reads it beside. */
export function HoursForm({ policy, version }: Props) {
  return (
    <ActionForm action={changePromisePolicyAction} label="What days are reckoned with">
      <input type="hidden" name="version" value={version} />
      <FieldGroup
        legend="Hours"
        hint="In UTC, as all hours here. Somebody is beside a furnace while it heats; it cools without company."
      >
        <Numbers
          policy={policy}
          fields={[
            ["dayStartsHour", "The day begins", "h UTC"],
            ["dayEndsHour", "The day ends", "h UTC"],
            ["reviewDays", "Evaluation and review", "working days"],
          ]}
        />
        <div className="row">
          {dayNames.map((name, at) => (
            <span key={name} className="check">
              <input
                type="checkbox"
                id={`day-${at + 1}`}
                name="workingDays"
                value={at + 1}
                defaultChecked={policy.workingDays.includes(at + 1)}
              />
              <label htmlFor={`day-${at + 1}`}>{name}</label>
            </span>
          ))}
        </div>
      </FieldGroup>
      <FieldGroup legend="A load" hint="Rates hold for a furnace whose own record names none.">
        <Numbers
          policy={policy}
          fields={[
            ["loadingHours", "Loading", "h"],
            ["dwellHours", "At each setpoint", "h"],
            ["referencesPerLoad", "Places for references", "places"],
          ]}
        />
        <Numbers
          policy={policy}
          fields={[
            ["rampUpCelsiusPerHour", "Heats by", "°C/h"],
            ["rampDownCelsiusPerHour", "Cools by", "°C/h"],
            ["ambientCelsius", "Starts from", "°C"],
            ["openBelowCelsius", "Opened below", "°C"],
          ]}
        />
        <p className="quiet">
          For planning alone: when a furnace may be opened is for its maker’s manual and the local rules, by
          the thermometer at the furnace.
        </p>
      </FieldGroup>
      <TextField
        name="reason"
        label="Why"
        maxLength={400}
        hint="What the figures rest on. Do not name people."
      />
      <div className="form-actions">
        <SubmitButton>Reckon by it from now on</SubmitButton>
      </div>
    </ActionForm>
  );
}
