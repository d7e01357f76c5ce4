"use client";
import { useId } from "react";

type Props = {
  readonly name: string;
  readonly label: string;
  /** "on" or "". */
  readonly value: string;
  readonly onChange: (value: string) => void;
};

/** A box of a row that can be moved or taken away; as LineControl, its value lives with its row. */
export function LineTick({ name, label, value, onChange }: Props) {
  const id = `${useId()}${name}`;
  return (
    <div className="check">
      <input
        id={id}
        name={name}
        type="checkbox"
        value="on"
        defaultChecked={value !== ""}
        onChange={(event) => onChange(event.target.checked ? "on" : "")}
      />
      <label htmlFor={id}>{label}</label>
    </div>
  );
}
