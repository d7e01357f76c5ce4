"use client";
import { useField } from "@/app/_ui/form-context.client";

type Props = {
  readonly choices: readonly {
    readonly value: string;
    readonly label: string;
    /** Lower-case hex, of what is signed. */
    readonly contentHash: string;
  }[];
};

/** In groups of eight, so that two people can compare it aloud. */
const grouped = (hash: string): string => hash.replace(/(.{8})(?=.)/g, "$1 ");

/** Boxes of one question: its refusal is said once, not beside each box. All are ticked at first. */
export function SensorChoice({ choices }: Props) {
  const { id, error, keptAll, refused } = useField("items");
  return (
    <>
      {choices.map(({ value, label, contentHash }, index) => {
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
              aria-describedby={error ? `${box}-hash ${id}-error` : `${box}-hash`}
            />
            <label htmlFor={box}>{label}</label>
            <code className="hash-whole" id={`${box}-hash`}>
              {grouped(contentHash)}
            </code>
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
