"use client";
import type { ReactNode } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  /** 2026-03-04 */
  readonly defaultValue?: string;
  readonly optional?: boolean;
  readonly index?: number;
};

export function DateField({ name, label, hint, defaultValue, optional, index }: Props) {
  const { id, error, kept } = useField(name, index);
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} optional={optional}>
      <input
        id={id}
        name={name}
        type="date"
        className="input"
        defaultValue={kept ?? defaultValue}
        required={!optional}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
      />
    </FieldFrame>
  );
}
