"use client";
import type { ReactNode } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField } from "@/app/_ui/form-context.client";

export type Choice = { readonly value: string; readonly label: string; readonly disabled?: boolean };

type Props = {
  readonly name: string;
  readonly label: ReactNode;
  readonly choices: readonly Choice[];
  readonly hint?: ReactNode;
  readonly defaultValue?: string;
  /** First, empty line: "Choose a furnace". Left out, the first choice is taken. */
  readonly prompt?: string;
  readonly optional?: boolean;
  readonly index?: number;
};

export function SelectField(props: Props) {
  const { name, label, hint, optional } = props;
  const { id, error, kept } = useField(name, props.index);
  const value = kept ?? props.defaultValue ?? "";
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} optional={optional}>
      <select
        // React resets a form after its action and a select then loses its choice: a new key makes it anew.
        key={value}
        id={id}
        name={name}
        className="input"
        defaultValue={value || undefined}
        required={!optional}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
      >
        {props.prompt === undefined ? null : <option value="">{props.prompt}</option>}
        {props.choices.map((choice) => (
          <option key={choice.value} value={choice.value} disabled={choice.disabled}>
            {choice.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
