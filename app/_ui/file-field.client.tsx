"use client";
import type { ReactNode } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  /** ".csv,text/csv" */
  readonly accept?: string;
  readonly multiple?: boolean;
  readonly optional?: boolean;
};

export function FileField({ name, label, hint, accept, multiple, optional }: Props) {
  const { id, error, refused } = useField(name);
  // A browser does not let a page put a file back; everything else in the form is kept.
  const told = refused ? <>{hint} Choose the file again: the browser does not keep it.</> : hint;
  return (
    <FieldFrame id={id} label={label} hint={told} error={error} optional={optional}>
      <input
        id={id}
        name={name}
        type="file"
        className="input"
        accept={accept}
        multiple={multiple}
        required={!optional}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, told, error)}
      />
    </FieldFrame>
  );
}
