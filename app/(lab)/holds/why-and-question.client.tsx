"use client";
import { type ReactNode, useState } from "react";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { useField, useFormState } from "@/app/_ui/form-context.client";
import { holdKindLabels } from "@/lib/domain/hold/labels";
import { QuestionFields } from "./question-fields";

const kinds = ["condition", "question"] as const;

/** Why it stands still, and the question: where it waits for the customer's answer, there has to be one. */
export function WhyAndQuestion({ children }: { readonly children: ReactNode }) {
  const state = useFormState();
  const kept = useField("kind").kept ?? "condition";
  const [kind, setKind] = useState(kept);
  const [seen, setSeen] = useState(state);
  // After its action the form stands as it was kept, or as it began.
  if (state !== seen) {
    setSeen(state);
    setKind(kept);
  }
  return (
    <div
      className="stack"
      onChange={({ target }) => {
        if (target instanceof HTMLInputElement && target.name === "kind") setKind(target.value);
      }}
    >
      <ChoiceField
        name="kind"
        legend="Why"
        defaultValue="condition"
        choices={kinds.map((value) => ({ value, label: holdKindLabels[value] }))}
      />
      {children}
      <QuestionFields
        prefix="question."
        {...(kind === "question"
          ? {}
          : {
              ifEmpty: `Left empty, nobody is asked. With “${holdKindLabels.question}” it has to be written.`,
            })}
      />
    </div>
  );
}
