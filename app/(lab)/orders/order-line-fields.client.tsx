"use client";
import type { ReactNode } from "react";
import { FieldGroup } from "@/app/_ui/field-group";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import {
  protectionLabels,
  protections,
  temperatureUnitLabels,
  temperatureUnits,
  toleranceChoices,
  toleranceLabels,
} from "@/lib/domain/order/labels";
import { intervalChoices, intervalLabels } from "@/lib/domain/order/use-terms";
import { LineControl } from "./line-control.client";
import type { LineDraft, LineField } from "./line-draft";
import { LineOptionsFields, type Providers } from "./line-options-fields.client";
import { LineTolerances } from "./line-tolerances";

type Props = {
  readonly index: number;
  readonly line: LineDraft;
  readonly errors: Readonly<Partial<Record<LineField, string>>>;
  readonly onChange: (field: LineField, value: string) => void;
  readonly isNew: boolean;
  readonly providers: Providers;
  /** Takes the line away. */
  readonly remove?: ReactNode;
};

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) =>
  values.map((value) => ({ value, label: labels[value] }));

const typeChoices = TypeLetter.options.map((letter) => ({ value: letter, label: `Type ${letter}` }));
const protectionChoices = choicesOf(protections, protectionLabels);
const unitChoices = choicesOf(temperatureUnits, temperatureUnitLabels);
const intervalOptions = choicesOf(intervalChoices, intervalLabels);
const toleranceOptions = choicesOf(toleranceChoices, toleranceLabels);

export function OrderLineFields({ index, line, errors, onChange, isNew, providers, remove }: Props) {
  const field = (name: LineField) => ({
    name: `lines.${index}.${name}`,
    value: line[name],
    error: errors[name],
    onChange: (value: string) => onChange(name, value),
  });
  const unitName = line.temperatureUnit === "F" ? "°F" : "°C";
  return (
    <FieldGroup legend={`Line ${index + 1}`}>
      <div className="fields">
        <LineControl {...field("quantity")} label="How many" inputMode="numeric" autoFocus={isNew} />
        <LineControl {...field("typeLetter")} label="Type letter" choices={typeChoices} />
        <LineControl {...field("protection")} label="About the wires" choices={protectionChoices} />
      </div>
      <LineControl
        {...field("construction")}
        label="Construction"
        hint="As it will stand on the certificate, e.g. metal-sheathed, 3 mm, 500 mm long, bare tails."
      />
      <LineControl
        {...field("setpoints")}
        label="Setpoints"
        optional
        hint="From low to high, with spaces between, e.g. 300 500 700. Needed before the order is accepted."
      />
      <div className="fields">
        <LineControl {...field("temperatureUnit")} label="Setpoints are in" choices={unitChoices} />
        <LineControl {...field("tolerance")} label="Tolerance" choices={toleranceOptions} />
        <LineControl
          {...field("ownLimit")}
          label="Own limit ±"
          optional
          hint={`In ${unitName}, for the customer’s own limit only, e.g. 2.5.`}
        />
      </div>
      <div className="fields">
        <LineControl
          {...field("useFrom")}
          label="Used from"
          optional
          hint={`In ${unitName}; the setpoints have to cover the range of use.`}
        />
        <LineControl {...field("useTo")} label="Used to" optional />
        <LineControl
          {...field("maximum")}
          label="Nothing above"
          optional
          hint={`In ${unitName}; left empty, the highest setpoint.`}
        />
      </div>
      <div className="fields">
        <LineControl
          {...field("intervalChoice")}
          label="Interval between setpoints"
          choices={intervalOptions}
        />
        <LineControl
          {...field("largestInterval")}
          label="At most"
          optional
          hint={`In ${unitName}, where it is as agreed.`}
        />
      </div>
      <LineTolerances line={line} />
      <LineOptionsFields line={line} errors={errors} field={field} providers={providers} />
      <input type="hidden" name={`lines.${index}.lineId`} value={line.lineId} />
      {remove ? <div className="row">{remove}</div> : null}
    </FieldGroup>
  );
}
