import { Disclosure } from "@/app/_ui/disclosure";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { EquipmentKind } from "@/lib/domain/equipment/types";
import { PointsField } from "./points-field.client";

function CoverageFactor() {
  return <NumberField name="findings.coverageFactor" label="Coverage factor k" defaultValue={2} />;
}

/** For a certificate that prints an equation; left empty where it prints points. */
function EquationFields() {
  return (
    <Disclosure summary="The certificate prints an equation instead of points">
      <SelectField
        name="findings.equation.kind"
        label="What the equation gives"
        prompt="No equation"
        optional
        choices={[
          { value: "polynomial", label: "The deviation from the reference function, in µV" },
          { value: "coefficients", label: "The emf itself, in µV" },
        ]}
      />
      <PointsField
        name="findings.equation.terms"
        legend="Coefficients for t in °C, that of t⁰ first; write 0 for a term that is missing"
        columns={[{ key: "coefficient", header: "Coefficient", unit: "µV/°C to the power of its line" }]}
        numberedFrom={0}
      />
      <NumberField name="findings.equation.fromCelsius" label="Holds from" unit="°C" optional />
      <NumberField name="findings.equation.toCelsius" label="Holds up to" unit="°C" optional />
    </Disclosure>
  );
}

function ReferenceFields() {
  return (
    <>
      <PointsField
        name="findings.points"
        legend="Deviation from the reference function, E − E(table), from cold to hot"
        columns={[
          { key: "celsius", header: "Temperature", unit: "°C" },
          { key: "deviationMicrovolt", header: "Deviation", unit: "µV" },
        ]}
      />
      <NumberField
        name="findings.singlePointReachCelsius"
        label="For a single point: how far each side it holds"
        unit="°C"
        optional
      />
      <EquationFields />
      <NumberField name="findings.expanded" label="Expanded uncertainty U" />
      <SelectField
        name="findings.unit"
        label="Unit of U"
        prompt="Choose the unit"
        choices={[
          { value: "celsius", label: "°C" },
          { value: "microvolt", label: "µV" },
        ]}
      />
      <CoverageFactor />
      <NumberField
        name="findings.degreesOfFreedom"
        label="Effective degrees of freedom"
        hint="Only if the certificate states them."
        optional
      />
    </>
  );
}

function VoltmeterFields() {
  return (
    <>
      <PointsField
        name="findings.corrections"
        legend="Corrections to be added to the indication, from low to high; none if none is applied"
        columns={[
          { key: "microvolt", header: "Indication", unit: "µV" },
          { key: "correctionMicrovolt", header: "Correction", unit: "µV" },
        ]}
      />
      <NumberField
        name="findings.expandedMicrovolt"
        label="Expanded uncertainty U, largest over the range used"
        unit="µV"
      />
      <CoverageFactor />
    </>
  );
}

function JunctionFields() {
  return (
    <>
      <NumberField name="findings.celsius" label="Temperature found" unit="°C" />
      <NumberField name="findings.expandedCelsius" label="Expanded uncertainty U" unit="°C" />
      <CoverageFactor />
    </>
  );
}

const fieldsOf = {
  reference: <ReferenceFields />,
  voltmeter: <VoltmeterFields />,
  scanner: (
    <NumberField
      name="findings.parasiticHalfWidthMicrovolt"
      label="Largest parasitic emf on any channel"
      unit="µV"
      hint="Its size, without sign."
    />
  ),
  junction: <JunctionFields />,
} as const;

export function FindingsFields({ kind }: { readonly kind: EquipmentKind }) {
  return (
    <>
      <input type="hidden" name="findings.kind" value={kind} />
      {fieldsOf[kind]}
      <TextArea
        name="findings.note"
        label="Note"
        hint="What the certificate says besides; it goes into the evidence."
        rows={2}
        optional
      />
    </>
  );
}
