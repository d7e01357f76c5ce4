import type { ReactNode } from "react";

type Props = {
  readonly id: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly error?: string;
  readonly optional?: boolean;
  readonly children: ReactNode;
};

/** Label, control, hint, error: in that order, so that controls side by side stand on one line, around every control. */
export function FieldFrame({ id, label, hint, error, optional, children }: Props) {
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        {optional ? <span className="field-optional"> (may stay empty)</span> : null}
      </label>
      {children}
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
