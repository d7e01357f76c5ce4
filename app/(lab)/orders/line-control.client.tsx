"use client";
import { type ReactNode, useId } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";

type Props = {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly error?: string;
  readonly hint?: ReactNode;
  readonly optional?: boolean;
  /** Makes it a list of choices. */
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
  readonly inputMode?: "numeric" | "text";
  readonly autoFocus?: boolean;
};

/**
 * One field of a row that can be moved or taken away: its value lives with its row. (The kit's fields keep theirs by
 * name, and a row's names change when another goes.)
 */
export function LineControl(props: Props) {
  const { name, label, value, error, hint, optional } = props;
  const id = `${useId()}${name}`;
  const common = {
    id,
    name,
    value,
    required: !optional,
    "aria-invalid": error ? true : undefined,
    "aria-describedby": describedBy(id, hint, error),
  } as const;
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} optional={optional}>
      {props.choices ? (
        // With a default and no value: emptied after an action, a form falls back to its defaults, and a select that is
        // held by its value has none. Its row gets a new key then, and with it this default.
        <select
          {...common}
          value={undefined}
          defaultValue={value}
          className="input"
          onChange={(event) => props.onChange(event.target.value)}
        >
          {props.choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          inputMode={props.inputMode}
          autoComplete="off"
          className="input"
          // biome-ignore lint/a11y/noAutofocus: the person just asked for this row
          autoFocus={props.autoFocus}
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
    </FieldFrame>
  );
}
