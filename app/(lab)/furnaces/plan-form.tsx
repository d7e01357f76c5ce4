import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { ReferenceType } from "@/lib/domain/evidence/schema";
import type { ConfigurationView, FurnaceView } from "@/lib/views/furnace";
import { planCharacterisationAction } from "./actions";

type Props = { readonly furnace: FurnaceView; readonly configuration: ConfigurationView };

const types = ReferenceType.options.map((value) => ({ value, label: `Type ${value}` }));

function ProbeFields() {
  return (
    <FieldGroup legend="Probe and monitor" columns>
      <TextField name="plan.probe" label="Probe that is moved" hint="Its tag, such as REF-S-02." />
      <SelectField name="plan.probeType" label="Its type" choices={types} defaultValue="S" />
      <TextField
        name="plan.monitor"
        label="Monitor that stays"
        hint="Another thermocouple, such as REF-S-01."
      />
      <SelectField name="plan.monitorType" label="Its type" choices={types} defaultValue="S" />
      <NumberField
        name="plan.probeInhomogeneityPercent"
        label="The probe’s inhomogeneity, half-width"
        unit="% of the emf"
        defaultValue="0.02"
        hint="0.02 % for type S is common practice, no source; better, as tested."
      />
      <NumberField
        name="plan.meterMicrovolt"
        label="One reading against the next, u"
        unit="µV"
        defaultValue="0.2"
        hint="Of the meter on one range: noise and linearity, not its calibration."
      />
    </FieldGroup>
  );
}

/** What will be measured, over which length, with what: said before the furnace is warm. */
export function PlanForm({ furnace, configuration }: Props) {
  const half = (furnace.workingLengthMillimetre ?? 60) / 2;
  const middle = configuration.immersionMillimetre;
  return (
    <ActionForm action={planCharacterisationAction} label="Plan a characterisation">
      <input type="hidden" name="configurationId" value={configuration.id} />
      <TextField
        name="plan.temperatures"
        label="Temperatures, °C"
        hint={`Rising, such as 300; 700; 1100. The furnace works from ${furnace.minimumCelsius} to ${furnace.maximumCelsius} °C.`}
      />
      <FieldGroup
        legend="Stated length"
        hint="As depths from the mouth of the tube. A figure without its length means nothing."
        columns
      >
        <NumberField name="plan.fromMillimetre" label="From" unit="mm" defaultValue={middle - half} />
        <NumberField name="plan.toMillimetre" label="To" unit="mm" defaultValue={middle + half} />
      </FieldGroup>
      <NumberField
        name="plan.windowMinutes"
        label="Measuring window of a run"
        unit="min"
        defaultValue="15"
        hint="Stability is told for a window of this length."
      />
      <ProbeFields />
      <div className="form-actions">
        <SubmitButton>Plan it</SubmitButton>
      </div>
    </ActionForm>
  );
}
