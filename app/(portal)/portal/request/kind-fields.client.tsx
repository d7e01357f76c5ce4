"use client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import {
  protectionLabels,
  protections,
  temperatureUnitLabels,
  temperatureUnits,
  toleranceChoices,
  toleranceLabels,
} from "@/lib/domain/order/labels";
import type { RequestedKind } from "@/lib/domain/request/schema";

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) =>
  values.map((value) => ({ value, label: labels[value] }));

const tolerances = choicesOf(toleranceChoices, {
  ...toleranceLabels,
  none: "None: the values are enough",
  own: "A limit of our own",
});

type Props = { readonly index: number; readonly kind: Required<RequestedKind> };

/** One kind of sensor: what it is, how many, where it is to be calibrated. */
export function KindFields({ index, kind }: Props) {
  const name = (field: keyof RequestedKind) => `kinds.${index}.${field}`;
  return (
    <FieldGroup legend={`Sensors ${index + 1}`}>
      <div className="fields">
        <SelectField
          name={name("typeLetter")}
          label="Type"
          choices={TypeLetter.options.map((value) => ({ value, label: `Type ${value}` }))}
          defaultValue={kind.typeLetter}
        />
        <NumberField name={name("quantity")} label="How many" defaultValue={kind.quantity} />
        <SelectField
          name={name("protection")}
          label="What surrounds the wires"
          choices={choicesOf(protections, protectionLabels)}
          defaultValue={kind.protection}
        />
      </div>
      <TextField
        name={name("construction")}
        label="What it looks like"
        hint="Sheath and its diameter, length, how it ends: plug, bare wires, head."
        defaultValue={kind.construction}
        maxLength={300}
      />
      <div className="fields">
        <SelectField
          name={name("temperatureUnit")}
          label="Your unit"
          choices={choicesOf(temperatureUnits, temperatureUnitLabels)}
          defaultValue={kind.temperatureUnit}
        />
        <NumberField name={name("useFrom")} label="Used from" optional defaultValue={kind.useFrom} />
        <NumberField name={name("useTo")} label="Used up to" optional defaultValue={kind.useTo} />
      </div>
      <TextField
        name={name("setpoints")}
        label="Temperatures to calibrate at"
        hint="For example 300 600 900. Leave it empty, and we propose them from the range you use the sensors in."
        optional
        defaultValue={kind.setpoints}
        maxLength={600}
      />
      <div className="fields">
        <SelectField
          name={name("tolerance")}
          label="Tolerance to judge by"
          choices={tolerances}
          defaultValue={kind.tolerance}
        />
        <NumberField
          name={name("ownLimit")}
          label="Limit of your own, ±"
          optional
          hint="In your unit."
          defaultValue={kind.ownLimit}
        />
        <TextField
          name={name("groupName")}
          label="What you call them"
          optional
          hint="Such as “zone 3”."
          defaultValue={kind.groupName}
          maxLength={80}
        />
      </div>
    </FieldGroup>
  );
}
