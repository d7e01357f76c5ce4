"use client";
import { useField } from "@/app/_ui/form-context.client";

type Props = { readonly choices: readonly { readonly value: string; readonly label: string }[] };

/** Boxes of one question: its refusal is said once, not beside each box. All are ticked at first. */
export function SensorChoice({ choices }: Props) {
  const { id, error, keptAll, refused } = useField("items");
  return (
    <>
      {choices.map(({ value, label }, index) => {
        const checked = refused ? (keptAll?.includes(value) ?? false) : true;
        const box = index === 0 ? id : `${id}-${index}`;
        return (
          <div className="check" key={value}>
            <input
              key={String(checked)}
              id={box}
              name="items"
              type="checkbox"
              value={value}
              defaultChecked={checked}
              aria-invalid={error ? true : undefined}
              aria-describedby={error ? `${id}-error` : undefined}
            />
            <label htmlFor={box}>{label}</label>
          </div>
        );
      })}
      {error ? (
        <div className="field-error" id={`${id}-error`}>
          {error}
        </div>
      ) : null}
    </>
  );
}
