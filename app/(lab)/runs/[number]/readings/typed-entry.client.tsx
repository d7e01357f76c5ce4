"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { useField } from "@/app/_ui/form-context.client";
import css from "../../runs.module.css";

type Channel = { readonly channel: string; readonly label: string };
type Props = {
  readonly name: "first" | "second";
  readonly title: string;
  readonly channels: readonly Channel[];
};

type CellProps = { readonly name: string; readonly label: string };

function NumberCell({ name, label }: CellProps) {
  const { id, error, kept } = useField(name);
  return (
    <>
      <input
        id={id}
        name={name}
        className="input input-number"
        inputMode="decimal"
        autoComplete="off"
        aria-label={label}
        defaultValue={kept}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? `${id}-error` : undefined}
      />
      {error ? (
        <div className="field-error" id={`${id}-error`}>
          {error}
        </div>
      ) : null}
    </>
  );
}

type ChoiceProps = CellProps & {
  readonly choices: readonly { readonly value: string; readonly label: string }[];
};

function ChoiceCell({ name, label, choices }: ChoiceProps) {
  const { id, error, kept } = useField(name);
  const value = kept ?? choices[0]?.value;
  return (
    <>
      <select
        key={value}
        id={id}
        name={name}
        className="input"
        aria-label={label}
        defaultValue={value}
        aria-invalid={error ? true : undefined}
        aria-describedby={error ? `${id}-error` : undefined}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      {error ? (
        <div className="field-error" id={`${id}-error`}>
          {error}
        </div>
      ) : null}
    </>
  );
}

const polarities = [
  { value: "+", label: "+ forward" },
  { value: "-", label: "− reversed" },
];

/** One of the two entries: a row per reading, filled by keyboard alone. Empty rows are left out. */
export function TypedEntry({ name, title, channels }: Props) {
  const [count, setCount] = useState(12);
  const choices = channels.map(({ channel, label }) => ({ value: channel, label: `${channel}: ${label}` }));
  return (
    <fieldset>
      <legend>{title}</legend>
      <div className={css.scrolls}>
        <table className={css.grid}>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col">Time, s</th>
              <th scope="col">Channel</th>
              <th scope="col">emf, µV</th>
              <th scope="col">Polarity</th>
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: count }, (_, index) => index).map((index) => {
              const row = `${title}, reading ${index + 1}`;
              return (
                <tr key={index}>
                  <th scope="row">{index + 1}</th>
                  <td>
                    <NumberCell name={`${name}.${index}.seconds`} label={`${row}, time in s`} />
                  </td>
                  <td>
                    <ChoiceCell
                      name={`${name}.${index}.channel`}
                      label={`${row}, channel`}
                      choices={choices}
                    />
                  </td>
                  <td>
                    <NumberCell name={`${name}.${index}.microvolts`} label={`${row}, emf in µV`} />
                  </td>
                  <td>
                    <ChoiceCell
                      name={`${name}.${index}.polarity`}
                      label={`${row}, polarity`}
                      choices={polarities}
                    />
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <Button type="button" kind="quiet" onClick={() => setCount(count + 12)}>
        Twelve more rows
      </Button>
    </fieldset>
  );
}
