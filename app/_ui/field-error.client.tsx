"use client";
import { useField } from "@/app/_ui/form-context.client";

/** The error of a name that has no field of this kit around it (a matrix, a list of rows). */
export function FieldError({ name }: { readonly name: string }) {
  const { id, error } = useField(name);
  return error ? (
    <div className="field-error" id={`${id}-error`} role="alert">
      {error}
    </div>
  ) : null;
}
