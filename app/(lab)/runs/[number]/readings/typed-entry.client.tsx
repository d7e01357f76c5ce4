"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { ChoiceCell, TextCell } from "@/app/_ui/cell-fields.client";
import css from "../../runs.module.css";

type Channel = { readonly channel: string; readonly label: string };
type Props = {
  readonly name: "first" | "second";
  readonly title: string;
  readonly channels: readonly Channel[];
};

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
                    <TextCell isNumber name={`${name}.${index}.seconds`} label={`${row}, time in s`} />
                  </td>
                  <td>
                    <ChoiceCell
                      name={`${name}.${index}.channel`}
                      label={`${row}, channel`}
                      choices={choices}
                    />
                  </td>
                  <td>
                    <TextCell isNumber name={`${name}.${index}.microvolts`} label={`${row}, emf in µV`} />
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
