import { DateField } from "@/app/_ui/date-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { Equipment, EquipmentKind } from "@/lib/domain/equipment/types";

type Props = { readonly kind: EquipmentKind; readonly equipment?: Equipment };

function IntervalFields({ kind, equipment }: Props) {
  return (
    <>
      {kind === "furnace" ? null : (
        <NumberField
          name="calibrationIntervalMonths"
          label="Calibrated every"
          unit="months"
          optional
          defaultValue={equipment?.calibrationIntervalMonths ?? undefined}
        />
      )}
      <NumberField
        name="checkIntervalDays"
        label="Checked between calibrations every"
        unit="days"
        hint="Empty: no intermediate check is planned."
        optional
        defaultValue={equipment?.checkIntervalDays ?? undefined}
      />
      <NumberField
        name="maintenanceIntervalDays"
        label="Maintained every"
        unit="days"
        hint="Empty: no maintenance is planned."
        optional
        defaultValue={equipment?.maintenanceIntervalDays ?? undefined}
      />
    </>
  );
}

/** The rest of the record of 6.4.13. What a kind must have before it serves is asked for then: it may come in bit by bit. */
export function RecordFields({ kind, equipment }: Props) {
  const asked = equipment?.requirement;
  return (
    <>
      <TextField
        name="firmware"
        label="Firmware"
        hint="Its version, or none."
        optional
        defaultValue={equipment?.firmware}
      />
      <DateField
        name="receivedOn"
        label="Received on"
        optional
        defaultValue={equipment?.receivedOn ?? undefined}
      />
      <TextField name="location" label="Where it is" optional defaultValue={equipment?.location} />
      <IntervalFields kind={kind} equipment={equipment} />
      {kind === "furnace" ? null : (
        <>
          <NumberField
            name="requirement.largestExpanded"
            label="Largest U that is fit for its use"
            hint="What a certificate of it must reach to be accepted."
            optional
            defaultValue={asked?.largestExpanded}
          />
          <SelectField
            name="requirement.unit"
            label="Unit of that U"
            prompt="No largest U"
            optional
            defaultValue={asked?.unit}
            choices={[
              { value: "celsius", label: "°C" },
              { value: "microvolt", label: "µV" },
            ]}
          />
          <NumberField
            name="requirement.fromCelsius"
            label="Used from"
            unit="°C"
            optional
            defaultValue={asked?.fromCelsius}
          />
          <NumberField
            name="requirement.toCelsius"
            label="Used up to"
            unit="°C"
            optional
            defaultValue={asked?.toCelsius}
          />
        </>
      )}
    </>
  );
}
