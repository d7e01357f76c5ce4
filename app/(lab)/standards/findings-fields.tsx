import type { ReactNode } from "react";
import { Disclosure } from "@/app/_ui/disclosure";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { Said } from "@/lib/domain/calibration/dcc-says";
import type { EquipmentKind } from "@/lib/domain/equipment/types";
import { AmbientFields, LeadFields } from "./other-findings-fields";
import { PointsField } from "./points-field.client";
import { SaidBeside } from "./said-beside.client";
import { ThermometerFields } from "./thermometer-fields";

type Props = {
  /** What a digital certificate says; empty for one that is typed. */
  readonly said: readonly Said[];
};
type NumberProps = Props & { readonly name: string; readonly label: string; readonly unit?: string };

const saidFor = (said: readonly Said[], name: string): readonly Said[] =>
  said.filter(({ field }) => field === name);

/** A figure of the certificate, with what the file says beside it. */
function Figure({ said, name, label, unit }: NumberProps) {
  const own = saidFor(said, name);
  return (
    <SaidBeside said={own} reason={name}>
      <NumberField name={name} label={label} unit={unit} defaultValue={own[0]?.value} />
    </SaidBeside>
  );
}

function CoverageFactor({ said }: Props) {
  const name = "findings.coverageFactor";
  const own = saidFor(said, name);
  return (
    <SaidBeside said={own} reason={name}>
      <NumberField name={name} label="Coverage factor k" defaultValue={own[0]?.value ?? 2} />
    </SaidBeside>
  );
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

function ReferenceFields({ said }: Props) {
  const unit = saidFor(said, "findings.unit");
  return (
    <>
      <PointsField
        name="findings.points"
        legend="Deviation from the reference function, E − E(table), from cold to hot"
        columns={[
          { key: "celsius", header: "Temperature", unit: "°C" },
          { key: "deviationMicrovolt", header: "Deviation", unit: "µV" },
        ]}
        said={said}
      />
      <NumberField
        name="findings.singlePointReachCelsius"
        label="For a single point: how far each side it holds"
        unit="°C"
        optional
      />
      <EquationFields />
      <Figure said={said} name="findings.expanded" label="Expanded uncertainty U" />
      <SaidBeside said={unit} reason="findings.unit">
        <SelectField
          name="findings.unit"
          label="Unit of U"
          prompt="Choose the unit"
          defaultValue={unit[0] ? String(unit[0].value) : undefined}
          choices={[
            { value: "celsius", label: "°C" },
            { value: "microvolt", label: "µV" },
          ]}
        />
      </SaidBeside>
      <CoverageFactor said={said} />
      <NumberField
        name="findings.degreesOfFreedom"
        label="Effective degrees of freedom"
        hint="Only if the certificate states them."
        optional
      />
    </>
  );
}

function VoltmeterFields({ said }: Props) {
  return (
    <>
      <PointsField
        name="findings.corrections"
        legend="Corrections to be added to the indication, from low to high; none if none is applied"
        columns={[
          { key: "microvolt", header: "Indication", unit: "µV" },
          { key: "correctionMicrovolt", header: "Correction", unit: "µV" },
        ]}
        said={said}
      />
      <Figure
        said={said}
        name="findings.expandedMicrovolt"
        label="Expanded uncertainty U, largest over the range used"
        unit="µV"
      />
      <CoverageFactor said={said} />
    </>
  );
}

function ScannerFields() {
  return (
    <NumberField
      name="findings.parasiticHalfWidthMicrovolt"
      label="Largest parasitic emf on any channel"
      unit="µV"
      hint="Its size, without sign."
    />
  );
}

function JunctionFields({ said }: Props) {
  return (
    <>
      <NumberField name="findings.celsius" label="Temperature found" unit="°C" />
      <NumberField name="findings.expandedCelsius" label="Expanded uncertainty U" unit="°C" />
      <CoverageFactor said={said} />
    </>
  );
}

const fieldsOf: Readonly<Partial<Record<EquipmentKind, (props: Props) => ReactNode>>> = {
  reference: ReferenceFields,
  voltmeter: VoltmeterFields,
  scanner: ScannerFields,
  junction: JunctionFields,
  thermometer: ThermometerFields,
  lead: LeadFields,
  ambient: AmbientFields,
};

export function FindingsFields({ kind, said }: Props & { readonly kind: EquipmentKind }) {
  const Fields = fieldsOf[kind];
  if (!Fields) return <p className="quiet">A certificate of this kind of equipment is not recorded here.</p>;
  return (
    <>
      <input type="hidden" name="findings.kind" value={kind} />
      <Fields said={said} />
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
