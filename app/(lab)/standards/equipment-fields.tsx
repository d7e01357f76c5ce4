import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { protectionLabels } from "@/lib/domain/equipment/labels";
import { type Particulars, protections } from "@/lib/domain/equipment/particulars";
import type { EquipmentKind } from "@/lib/domain/equipment/types";
import { ReferenceType } from "@/lib/domain/evidence/schema";

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
  readonly optional?: boolean;
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
    {
      name: "interpolationHalfWidthCelsius",
      label: "Between the points of its certificate, half-width",
      unit: "°C",
      hint: "Leave empty where the certificate’s U covers values between its points.",
      optional: true,
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
    {
      name: "spreadHalfWidthCelsius",
      label: "Spread over the block, half-width",
      unit: "°C",
      hint: "For a block of junctions: how far one channel may be from the block’s thermometer.",
      optional: true,
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
            choices={ReferenceType.options.map((letter) => ({ value: letter, label: `Type ${letter}` }))}
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
          optional={figure.optional}
          defaultValue={known[figure.name]}
        />
      ))}
      {kind === "junction" ? (
        <TextField
          name="particulars.block"
          label="Block"
          hint="Junctions that name the same block share its thermometer, and its error."
          optional
          defaultValue={known.block as string | undefined}
        />
      ) : null}
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
