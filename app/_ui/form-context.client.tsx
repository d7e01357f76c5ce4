"use client";
import { createContext, useContext, useId } from "react";
import type { FormState } from "@/lib/web/form-state";

const FormContext = createContext<FormState>({ status: "idle" });
export const FormStateProvider = FormContext.Provider;

export type FieldState = {
  readonly id: string;
  readonly error: string | undefined;
  /** What was typed before the refusal; undefined when there is nothing to keep. */
  readonly kept: string | undefined;
  readonly keptAll: readonly string[] | undefined;
  readonly refused: boolean;
};

/** What the form knows about one field. `index` picks one of several fields that share a name. */
export function useField(name: string, index = 0): FieldState {
  const state = useContext(FormContext);
  const id = `${useId()}${name}`;
  if (state.status !== "refused") {
    return { id, error: undefined, kept: undefined, keptAll: undefined, refused: false };
  }
  const value = state.values[name];
  const keptAll = value === undefined ? undefined : Array.isArray(value) ? value : [value];
  const error = state.fields[`${name}.${index}`] ?? (index === 0 ? state.fields[name] : undefined);
  return { id, error, kept: keptAll?.[index], keptAll, refused: true };
}

/** The form's whole state, for parts that manage rows of fields of their own. */
export const useFormState = (): FormState => useContext(FormContext);
