import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { protectionLabels } from "@/lib/domain/equipment/labels";
import { type Particulars, protections } from "@/lib/domain/equipment/particulars";
import type { EquipmentKind } from "@/lib/domain/equipment/types";
import { TypeLetter } from "@/lib/domain/evidence/schema";

type Described = { readonly maker: string; readonly model: string; readonly serial: string };

export function DescribedFields({ equipment }: { readonly equipment?: Described }) {
  return (
    <>
      <TextField name="maker" label="Maker" defaultValue={equipment?.maker} />
      <TextField name="model" label="Model" optional defaultValue={equipment?.model} />
      <TextField name="serial" label="Serial number" defaultValue={equipment?.serial} />
    </>
  );
}

type Figure = {
  readonly name: string;
  readonly label: string;
  readonly unit?: string;
  readonly hint: string;
};

/** The figures of each kind that go into the budget, besides what a certificate says. */
const figures: Readonly<Record<EquipmentKind, readonly Figure[]>> = {
  reference: [
    {
      name: "driftHalfWidthCelsius",
      label: "Drift between calibrations, half-width",
      unit: "°C",
      hint: "How far it may have moved since its certificate, either way.",
    },
    {
      name: "inhomogeneityRelativeHalfWidth",
      label: "Inhomogeneity, half-width as a fraction of the emf",
      hint: "0.0002 is 0.02 % of the emf.",
    },
  ],
  voltmeter: [
    {
      name: "driftHalfWidthMicrovolt",
      label: "Drift between calibrations, half-width",
      unit: "µV",
      hint: "How far it may have moved since its certificate, either way.",
    },
    {
      name: "resolutionMicrovolt",
      label: "Resolution",
      unit: "µV",
      hint: "One step of the last digit on the range used.",
    },
  ],
  scanner: [
    {
      name: "parasiticHalfWidthMicrovolt",
      label: "Parasitic emf, half-width",
      unit: "µV",
      hint: "Largest between any two channels. A certificate’s value takes its place.",
    },
  ],
  junction: [
    { name: "celsius", label: "Its temperature", unit: "°C", hint: "0 for an ice point." },
    {
      name: "halfWidthCelsius",
      label: "Half-width of that temperature",
      unit: "°C",
      hint: "A certificate’s U takes its place.",
    },
  ],
};

type Props = { readonly kind: EquipmentKind; readonly particulars?: Particulars };

export function ParticularsFields({ kind, particulars }: Props) {
  const known = (particulars ?? {}) as Readonly<Record<string, string | number>>;
  return (
    <>
      <input type="hidden" name="particulars.kind" value={kind} />
      {kind === "reference" ? (
        <>
          <SelectField
            name="particulars.type"
            label="Type"
            prompt="Choose the type letter"
            defaultValue={known.type as string | undefined}
            choices={TypeLetter.options.map((letter) => ({ value: letter, label: `Type ${letter}` }))}
          />
          <SelectField
            name="particulars.protection"
            label="About the wires"
            hint="Platinum stands beside base metal only in a closed alumina sheath."
            prompt="Choose what stands about them"
            defaultValue={known.protection as string | undefined}
            choices={protections.map((value) => ({ value, label: protectionLabels[value] ?? value }))}
          />
        </>
      ) : null}
      {figures[kind].map((figure) => (
        <NumberField
          key={figure.name}
          name={`particulars.${figure.name}`}
          label={figure.label}
          unit={figure.unit}
          hint={figure.hint}
          defaultValue={known[figure.name]}
        />
      ))}
      <TextArea
        name="particulars.basis"
        label="What these figures rest on"
        hint="Such as its calibration history or a measurement of your own, with its date. It stands in the evidence."
        rows={2}
        defaultValue={known.basis as string | undefined}
      />
    </>
  );
}
