import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { type IntakePolicy, policyTypes } from "@/lib/domain/intake/policy";
import { changeIntakePolicyAction } from "./actions";

type Props = { readonly policy: IntakePolicy; readonly version: number };

/** What the quality manager sets; everybody else reads it beside. */
export function PolicyForm({ policy, version }: Props) {
  const { leastInsulationMegaohm: least } = policy;
  return (
    <ActionForm action={changeIntakePolicyAction} label="Limits of intake">
      <input type="hidden" name="version" value={version} />
      <FieldGroup
        legend="Least insulation"
        hint="Wires to sheath, cold; not asked of a grounded or exposed junction."
      >
        <div className="fields">
          <NumberField name="insulationNew" label="New sensors" unit="MΩ" defaultValue={least.new} />
          <NumberField name="insulationUsed" label="Used before" unit="MΩ" defaultValue={least.used} />
          <NumberField name="insulationNotKnown" label="Not known" unit="MΩ" defaultValue={least.notKnown} />
        </div>
      </FieldGroup>
      <FieldGroup
        legend="Loop resistance"
        hint="Expected = resistivity of both wires together × length ÷ cross section, where both are stated."
      >
        <div className="fields">
          <NumberField
            name="loopTolerancePercent"
            label="May differ from expected by"
            unit="%"
            defaultValue={policy.loopTolerancePercent}
          />
          <NumberField
            name="largestLoopOhm"
            label="Never more than"
            unit="Ω"
            defaultValue={policy.largestLoopOhm}
          />
        </div>
        <div className="fields">
          {policyTypes.map((type) => (
            <NumberField
              key={type}
              name={`resistivity.${type}`}
              label={`Type ${type}`}
              unit="µΩ·m"
              defaultValue={policy.pairResistivityMicroohmMetre[type]}
            />
          ))}
        </div>
      </FieldGroup>
      <TextField
        name="reason"
        label="Why"
        maxLength={400}
        hint="What the figures rest on. Do not name people."
      />
      <div className="form-actions">
        <SubmitButton>Set the limits</SubmitButton>
      </div>
    </ActionForm>
  );
}
