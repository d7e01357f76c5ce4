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
  readonly type?: "text" | "email" | "password" | "tel" | "url" | "search";
  readonly autoComplete?: string;
  readonly maxLength?: number;
  readonly autoFocus?: boolean;
  readonly placeholder?: string;
  /** Which one, when several fields share a name. */
  readonly index?: number;
};

export function TextField(props: Props) {
  const { name, label, hint, optional, type = "text" } = props;
  const { id, error, kept } = useField(name, props.index);
  // A password is never sent back to the page.
  const value = type === "password" ? undefined : (kept ?? props.defaultValue);
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error} optional={optional}>
      <input
        id={id}
        name={name}
        type={type}
        className="input"
        defaultValue={value}
        required={!optional}
        autoComplete={props.autoComplete ?? "off"}
        maxLength={props.maxLength}
        // biome-ignore lint/a11y/noAutofocus: asked for by the page, where the field is its only task
        autoFocus={props.autoFocus}
        placeholder={props.placeholder}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
      />
    </FieldFrame>
  );
}
