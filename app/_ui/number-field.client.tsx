"use client";
import type { ReactNode } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly name: string;
  readonly label: ReactNode;
  /** Stands behind the field and is read with it. */
  readonly unit?: string;
  readonly hint?: ReactNode;
  readonly defaultValue?: string | number;
  readonly optional?: boolean;
  readonly index?: number;
};

/** A number kept as typed (text, decimal keyboard): the server reads it, so that a comma or 1e-3 gets a proper answer. */
export function NumberField(props: Props) {
  const { name, label, unit, hint, optional } = props;
  const { id, error, kept } = useField(name, props.index);
  const unitId = `${id}-unit`;
  const described = [unit ? unitId : "", describedBy(id, hint, error) ?? ""].filter(Boolean).join(" ");
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} optional={optional}>
      <div className="input-with-unit">
        <input
          id={id}
          name={name}
          type="text"
          inputMode="decimal"
          className="input input-number"
          defaultValue={kept ?? props.defaultValue}
          required={!optional}
          autoComplete="off"
          aria-invalid={error ? true : undefined}
          aria-describedby={described || undefined}
        />
        {unit ? (
          <span className="input-unit" id={unitId}>
            {unit}
          </span>
        ) : null}
      </div>
    </FieldFrame>
  );
}
