import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { DateField } from "@/app/_ui/date-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { NumberField } from "@/app/_ui/number-field.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { configurationKindLabels } from "@/lib/domain/furnace/labels";
import type { FurnaceView } from "@/lib/views/furnace";
import { recordCharacterisationAction } from "./actions";
import { CharacterisationMark } from "./characterisation-mark";

type Props = { readonly configuration: FurnaceView["configurations"][number]; readonly mayChange: boolean };

const columns = [
  { key: "performedOn", header: "Measured" },
  { key: "validUntil", header: "Valid until" },
  { key: "uniformity", header: "Half-width", unit: "°C", align: "number" as const },
  { key: "statement", header: "What it means" },
];

export function ConfigurationSection({ configuration, mayChange }: Props) {
  const { name, kind, places, immersionMillimetre, characterisations } = configuration;
  return (
    <Section title={name} note={<CharacterisationMark due={configuration.due} />}>
      <p>
        {configurationKindLabels[kind]}, {places} places, immersion {immersionMillimetre} mm
      </p>
      <DataTable
        caption={`Characterisations of ${name}, newest first`}
        captionUnseen
        columns={columns}
        rows={characterisations.map((one) => ({
          key: one.id,
          cells: {
            performedOn: <Timestamp at={one.performedOn} precision="day" />,
            validUntil: <Timestamp at={one.validUntil} precision="day" />,
            uniformity: `± ${one.uniformityHalfWidthCelsius}`,
            statement: one.statement,
          },
        }))}
        empty={<p className="quiet">Not characterised yet: no run can be made in it.</p>}
      />
      {mayChange ? (
        <Disclosure summary="Record a characterisation" open={characterisations.length === 0}>
          <CharacterisationForm configurationId={configuration.id} name={name} />
        </Disclosure>
      ) : null}
    </Section>
  );
}

function CharacterisationForm({
  configurationId,
  name,
}: {
  readonly configurationId: string;
  readonly name: string;
}) {
  return (
    <ActionForm action={recordCharacterisationAction} label={`Record a characterisation of ${name}`}>
      <input type="hidden" name="configurationId" value={configurationId} />
      <DateField name="performedOn" label="Measured on" />
      <DateField name="validUntil" label="Valid until" />
      <NumberField
        name="uniformityHalfWidthCelsius"
        label="Any place against the references’ mean, half-width"
        unit="°C"
        hint="Half the full range, along and across together."
      />
      <TextArea
        name="statement"
        label="What it means"
        hint="Over which length, at which temperatures, and that it is the half-width: without these the figure means nothing."
        rows={3}
      />
      <div className="form-actions">
        <SubmitButton kind="quiet">Record the characterisation</SubmitButton>
      </div>
    </ActionForm>
  );
}
