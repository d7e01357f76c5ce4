import { NumberField } from "@/app/_ui/number-field.client";

const coverageFactor = (
  <NumberField name="findings.coverageFactor" label="Coverage factor k" defaultValue={2} />
);

/** A lot of lead or compensating cable as tested. */
export function LeadFields() {
  return (
    <>
      <NumberField name="findings.correctionMicrovolt" label="Correction, added to the emf" unit="µV" />
      <NumberField name="findings.fromCelsius" label="Its ends from" unit="°C" />
      <NumberField name="findings.toCelsius" label="Its ends up to" unit="°C" />
      <NumberField name="findings.expandedMicrovolt" label="Expanded uncertainty U" unit="µV" />
      {coverageFactor}
    </>
  );
}

/** What tells the room. */
export function AmbientFields() {
  return (
    <>
      <NumberField name="findings.correctionCelsius" label="Correction of its temperature" unit="°C" />
      <NumberField name="findings.expandedCelsius" label="Expanded uncertainty U of it" unit="°C" />
      <NumberField
        name="findings.humidity.correctionPercent"
        label="Correction of its relative humidity"
        unit="%"
        optional
      />
      <NumberField
        name="findings.humidity.expandedPercent"
        label="Expanded uncertainty U of it"
        unit="%"
        optional
      />
      {coverageFactor}
    </>
  );
}
