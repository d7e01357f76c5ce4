"use client";
import { useField } from "@/app/_ui/form-context.client";

type CellProps = {
  readonly name: string;
  readonly label: string;
  readonly defaultValue?: string | number;
  readonly isNumber?: boolean;
};

/** A field in a cell of a table that is filled in: column and row together are its label, its refusal stands below it. */
export function TextCell({ name, label, defaultValue, isNumber }: CellProps) {
  const { id, error, kept } = useField(name);
  return (
    <>
      <input
        id={id}
        name={name}
        className={isNumber ? "input input-number" : "input"}
        inputMode={isNumber ? "decimal" : undefined}
        autoComplete="off"
        aria-label={label}
        defaultValue={kept ?? defaultValue}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? `${id}-error` : undefined}
      />
      {error ? (
        <div className="field-error" id={`${id}-error`}>
          {error}
        </div>
      ) : null}
    </>
  );
}

type ChoiceProps = CellProps & {
  readonly choices: readonly { readonly value: string; readonly label: string }[];
};

export function ChoiceCell({ name, label, defaultValue, choices }: ChoiceProps) {
  const { id, error, kept } = useField(name);
  const value = kept ?? String(defaultValue ?? choices[0]?.value ?? "");
  return (
    <>
      <select
        key={value}
        id={id}
        name={name}
        className="input"
        aria-label={label}
        defaultValue={value}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? `${id}-error` : undefined}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      {error ? (
        <div className="field-error" id={`${id}-error`}>
          {error}
        </div>
      ) : null}
    </>
  );
}
