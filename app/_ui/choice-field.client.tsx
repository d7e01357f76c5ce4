"use client";
import type { ReactNode } from "react";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly name: string;
  readonly legend: ReactNode;
  readonly choices: readonly {
    readonly value: string;
    readonly label: ReactNode;
    readonly hint?: ReactNode;
  }[];
  readonly defaultValue?: string;
};

/** One of a few (radio buttons), where all choices should be seen at once. */
export function ChoiceField({ name, legend, choices, defaultValue }: Props) {
  const { id, error, kept } = useField(name);
  const chosen = kept ?? defaultValue;
  return (
    <fieldset className="field-group" aria-describedby={error ? `${id}-error` : undefined}>
      <legend>{legend}</legend>
      <div className="field-group-body" key={chosen}>
        {choices.map((choice) => (
          <div className="check" key={choice.value}>
            <input
              id={`${id}-${choice.value}`}
              type="radio"
              name={name}
              value={choice.value}
              defaultChecked={choice.value === chosen}
              aria-invalid={error ? true : undefined}
            />
            <label htmlFor={`${id}-${choice.value}`}>{choice.label}</label>
            {choice.hint ? <div className="field-hint">{choice.hint}</div> : null}
          </div>
        ))}
        {error ? (
          <div className="field-error" id={`${id}-error`}>
            {error}
          </div>
        ) : null}
      </div>
    </fieldset>
  );
}
