import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { recordInhomogeneityAction } from "./actions";
import { RowGrid } from "./row-grid.client";

const columns = [
  { key: "millimetre", header: "Depth", unit: "mm" },
  { key: "microvolt", header: "Emf", unit: "µV" },
  { key: "monitorCelsius", header: "Bath or furnace", unit: "°C" },
];

/** Depth by depth, with what bath or furnace was at the moment. */
export function InhomogeneityForm({ today }: { readonly today: string }) {
  return (
    <ActionForm action={recordInhomogeneityAction} shape="wide" label="Record an inhomogeneity test">
      <div className="fields">
        <TextField name="tag" label="Thermocouple" hint="The tag of a sensor or of a reference." />
        <DateField name="performedOn" label="Tested on" defaultValue={today} />
        <TextField
          name="readings.medium"
          label="In"
          hint="Such as salt bath, or furnace FUR-01 pulled out."
        />
        <NumberField name="readings.celsius" label="Bath or furnace" unit="°C" defaultValue={250} />
        <NumberField name="readings.outsideCelsius" label="Outside of it" unit="°C" defaultValue={23} />
        <NumberField
          name="readings.meterMicrovolt"
          label="One reading against the next, u"
          unit="µV"
          defaultValue="0.2"
        />
      </div>
      <ChoiceField
        name="readings.method"
        legend="How it was moved"
        defaultValue="scan"
        choices={[
          { value: "scan", label: "Scan", hint: "Five depths or more through a steep gradient." },
          {
            value: "two-immersions",
            label: "Two immersions",
            hint: "At least 20 mm apart at one temperature; says less than a scan.",
          },
        ]}
      />
      <RowGrid
        name="readings.rows"
        legend="Readings"
        line="Depth"
        columns={columns}
        rows={Array.from({ length: 8 }, () => ({}))}
      />
      <div className="form-actions">
        <SubmitButton>Record the test</SubmitButton>
      </div>
    </ActionForm>
  );
}
