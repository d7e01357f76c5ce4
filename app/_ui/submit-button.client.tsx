"use client";
import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { Button } from "@/app/_ui/button";

type Props = {
  readonly children: ReactNode;
  readonly kind?: "primary" | "quiet" | "danger";
  readonly size?: "desk" | "bench";
  /** Said while the server works: "Saving…". */
  readonly pending?: string;
  /** Sent with the form, when one form has several buttons. */
  readonly name?: string;
  readonly value?: string;
};

/** Sends the form, once: while it works it says so and does not send again. */
export function SubmitButton({ children, kind = "primary", size, pending = "Saving…", name, value }: Props) {
  const status = useFormStatus();
  return (
    <Button
      type="submit"
      kind={kind}
      size={size}
      name={name}
      value={value}
      aria-disabled={status.pending || undefined}
      onClick={status.pending ? (event) => event.preventDefault() : undefined}
    >
      {status.pending ? pending : children}
    </Button>
  );
}
