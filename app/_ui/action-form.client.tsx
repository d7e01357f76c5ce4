"use client";
import { type ReactNode, useActionState, useEffect, useRef } from "react";
import { FormStateProvider } from "@/app/_ui/form-context.client";
import { FormMessage } from "@/app/_ui/form-message";
import type { FormState } from "@/lib/web/form-state";

type Props = {
  readonly action: (state: FormState, data: FormData) => Promise<FormState>;
  readonly children: ReactNode;
  /** Address to come back to without JavaScript; the page's own unless told. */
  readonly permalink?: string;
  /** wide: as wide as its section; inline: one line, for a button with at most one field. */
  readonly shape?: "column" | "wide" | "inline";
  /** Names the form for screen readers and tests. */
  readonly label?: string;
};

const classes = { column: "form", wide: "form form-wide", inline: "form-inline" } as const;

/**
 * A form around one action. After a refusal each field shows its error and keeps what was typed, and the first
 * invalid field has the focus. Fields learn all that by their `name`, through context, so children stay server-rendered.
 * Without JavaScript the same form posts, and the page comes back with the same state.
 */
export function ActionForm({ action, children, permalink, shape = "column", label }: Props) {
  const [state, submit] = useActionState(action, { status: "idle" } as FormState, permalink);
  const form = useRef<HTMLFormElement>(null);

  useEffect(() => {
    if (state.status !== "refused") return;
    const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]:not([type="hidden"])');
    (first ?? form.current?.querySelector<HTMLElement>("[data-form-message]"))?.focus();
  }, [state]);

  return (
    <form ref={form} action={submit} className={classes[shape]} aria-label={label} noValidate>
      <FormStateProvider value={state}>
        <FormMessage state={state} />
        {children}
      </FormStateProvider>
    </form>
  );
}
