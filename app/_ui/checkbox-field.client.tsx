"use client";
import type { ReactNode } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly name: string;
  readonly label: ReactNode;
  /** What is sent when ticked. Several boxes may share a name with different values. */
  readonly value?: string;
  readonly hint?: ReactNode;
  readonly defaultChecked?: boolean;
};

export function CheckboxField({ name, label, value = "yes", hint, defaultChecked = false }: Props) {
  const { id, error, keptAll, refused } = useField(name);
  // After a refusal an unticked box sends nothing: absent means unticked, not "as at first".
  const checked = refused ? (keptAll?.includes(value) ?? false) : defaultChecked;
  return (
    <div className="check">
      <input
        key={String(checked)}
        id={id}
        name={name}
        type="checkbox"
        value={value}
        defaultChecked={checked}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
      />
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <div className="field-hint" id={`${id}-hint`}>
          {hint}
        </div>
      ) : null}
      {error ? (
        <div className="field-error" id={`${id}-error`}>
          {error}
        </div>
      ) : null}
    </div>
  );
}
