"use client";
import type { ReactNode } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly defaultValue?: string;
  readonly optional?: boolean;
  readonly rows?: number;
  readonly maxLength?: number;
  readonly index?: number;
};

export function TextArea(props: Props) {
  const { name, label, hint, optional } = props;
  const { id, error, kept } = useField(name, props.index);
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} optional={optional}>
      <textarea
        id={id}
        name={name}
        className="input"
        rows={props.rows ?? 4}
        maxLength={props.maxLength}
        defaultValue={kept ?? props.defaultValue}
        required={!optional}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
      />
    </FieldFrame>
  );
}
