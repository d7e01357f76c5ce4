"use client";
import { useEffect, useRef } from "react";

type Props = { readonly id: string; readonly isRefused: boolean };

/** Has the focus from the start and empties itself: the next scan does not go behind the last one. */
export function ScanField({ id, isRefused }: Props) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  return (
    <input
      ref={field}
      id={id}
      name="q"
      className="input"
      autoComplete="off"
      autoCapitalize="off"
      spellCheck={false}
      enterKeyHint="search"
      maxLength={300}
      required
      aria-invalid={isRefused || undefined}
      aria-describedby={isRefused ? `${id}-error` : undefined}
    />
  );
}
