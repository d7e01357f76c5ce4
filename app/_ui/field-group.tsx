import type { ReactNode } from "react";

type Props = {
  readonly legend: ReactNode;
  readonly hint?: ReactNode;
  /** Fields side by side where there is room. */
  readonly columns?: boolean;
  readonly children: ReactNode;
};

export function FieldGroup({ legend, hint, columns, children }: Props) {
  return (
    <fieldset className="field-group">
      <legend>{legend}</legend>
      <div className="field-group-body">
        {hint ? <p className="field-hint">{hint}</p> : null}
        {columns ? <div className="fields">{children}</div> : children}
      </div>
    </fieldset>
  );
}
