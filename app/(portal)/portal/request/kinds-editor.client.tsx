"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { FieldError } from "@/app/_ui/field-error.client";
import { useFormState } from "@/app/_ui/form-context.client";
import type { RequestedKind } from "@/lib/domain/request/schema";
import { emptyKind } from "./kind-draft";
import { KindFields } from "./kind-fields.client";

/** How many a refused form held, so that none is lost, with or without JavaScript. */
const keptCount = (values: Readonly<Record<string, unknown>>): number =>
  Math.max(0, ...Object.keys(values).map((name) => Number(/^kinds\.(\d{1,2})\./.exec(name)?.[1] ?? -1) + 1));

/** One or more kinds of sensor. Fields keep what was typed by their name, so only how many there are is held here. */
export function KindsEditor({ initial }: { readonly initial: readonly RequestedKind[] }) {
  const state = useFormState();
  const kept = state.status === "refused" ? keptCount(state.values) : 0;
  const [count, setCount] = useState(Math.max(1, initial.length, kept));
  return (
    <div className="stack">
      {Array.from({ length: count }, (_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: only the last one comes and goes
        <KindFields key={index} index={index} kind={{ ...emptyKind, ...initial[index] }} />
      ))}
      <FieldError name="kinds" />
      <div className="row">
        <Button onClick={() => setCount(count + 1)}>Add another kind of sensor</Button>
        {count > 1 ? <Button onClick={() => setCount(count - 1)}>Take the last one away</Button> : null}
      </div>
    </div>
  );
}
