import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { Notice } from "@/app/_ui/notice";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { dueLabels } from "@/lib/domain/calibration/due";
import { chosenSetpoints } from "@/lib/domain/run/chosen-setpoints";
import type { NewRunView } from "@/lib/views/run/new-run";
import { createRunAction } from "../actions";
import { celsiusText } from "../run-marks";
import { LoadPreview } from "./load-preview.client";
import { proposeRows } from "./place-rows";
import { PlaceTable } from "./place-table";

type Props = {
  readonly view: NewRunView;
  readonly sensors: NewRunView["waiting"];
  readonly references: NewRunView["references"];
};

type Due = NewRunView["voltmeters"][number]["due"];
const dueNote = (due: Due) => (due === "in-date" ? "" : ` (${dueLabels[due].toLowerCase()})`);
const configurationNote = (due: Due) => (due === "none" ? " (not characterised)" : dueNote(due));
const equipmentChoices = (items: NewRunView["voltmeters"]) =>
  items.map(({ id, tag, due }) => ({ value: id, label: `${tag}${dueNote(due)}` }));

export function LoadForm({ view, sensors, references }: Props) {
  const { celsius } = chosenSetpoints(
    sensors.map(({ setpointsCelsius }) => ({ orderedCelsius: setpointsCelsius })),
    [],
  );
  // Nothing goes above what it was ordered to: higher setpoints are offered, and not ticked.
  const ceiling = Math.min(
    ...sensors.map(({ setpointsCelsius }) => setpointsCelsius.at(-1) ?? Number.POSITIVE_INFINITY),
  );
  const rows = proposeRows(references, sensors);
  return (
    <ActionForm action={createRunAction} shape="wide" label="Plan a run">
      <div className="fields">
        <SelectField
          name="configurationId"
          label="Furnace and configuration"
          choices={view.configurations.map(({ id, label, places, due, problem }) => ({
            value: id,
            label: `${label}, ${places} places${problem ? " (furnace not in service)" : configurationNote(due)}`,
            // Only an accepted characterisation in date carries a run.
            disabled: problem !== null || due === "none" || due === "out-of-date",
          }))}
        />
        <SelectField name="voltmeterId" label="Voltmeter" choices={equipmentChoices(view.voltmeters)} />
        <SelectField name="scannerId" label="Scanner" choices={equipmentChoices(view.scanners)} />
        <SelectField
          name="procedure"
          label="Procedure"
          defaultValue="tube-furnace"
          choices={view.procedures.map(({ key, name }) => ({ value: key, label: name }))}
          hint="Only current revisions. It brings repeatability, inhomogeneity and leads to the budget."
        />
      </div>
      <FieldGroup legend="Setpoints" hint="Ascending, of those the sensors are ordered at." columns>
        {celsius.map((one) => (
          <CheckboxField
            key={one}
            name="setpoints"
            value={String(one)}
            label={`${celsiusText(one)} °C`}
            defaultChecked={one <= ceiling}
          />
        ))}
      </FieldGroup>
      <FieldGroup legend="Furnace load">
        <FieldError name="places" />
        <LoadPreview rows={rows} configurations={view.configurations} />
        <PlaceTable
          rows={rows}
          junctions={view.junctions}
          leads={view.leads}
          immersionMillimetre={view.configurations[0]?.immersionMillimetre}
        />
      </FieldGroup>
      <Notice kind="caution" title="Before you load">
        Platinum beside base metal stands in its own closed, gas-tight alumina sheath. Load into a cold
        furnace, tips together, none touching the tube. Handle platinum with clean gloves.
      </Notice>
      <TextArea name="note" label="Note" optional rows={2} maxLength={2000} />
      <div className="form-actions">
        <SubmitButton pending="Making the run…">Make the run</SubmitButton>
      </div>
    </ActionForm>
  );
}
