"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { TextCell } from "@/app/_ui/cell-fields.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import type { Said } from "@/lib/domain/calibration/dcc-says";
import css from "./calibrations.module.css";
import { SaidBeside, SaidPlace } from "./said-beside.client";

type Column = { readonly key: string; readonly header: string; readonly unit: string };
type Props = {
  readonly name: string;
  readonly legend: string;
  readonly columns: readonly Column[];
  /** 0 for the terms of an equation, whose line is the power. */
  readonly numberedFrom?: 0 | 1;
  /** What a digital certificate says, cell by cell. */
  readonly said?: readonly Said[];
};

const step = 6;
const most = 60;

/** Points of a certificate, one a line. Lines left empty at the end are left out. */
export function PointsField({ name, legend, columns, numberedFrom = 1, said = [] }: Props) {
  const cells = said.filter(({ field }) => field.startsWith(`${name}.`));
  const lines = Math.ceil(cells.length / columns.length);
  const [count, setCount] = useState(Math.max(step, lines));
  return (
    <FieldGroup legend={legend}>
      <FieldError name={name} />
      <SaidBeside said={cells} reason={name} isTable>
        <table className="table">
          <thead>
            <tr>
              <th scope="col" className="number">
                {numberedFrom === 0 ? "Power" : "Point"}
              </th>
              {columns.map((column) => (
                <th key={column.key} scope="col">
                  {column.header}
                  <span className="table-unit">{column.unit}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: count }, (_, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the list
              <tr key={index}>
                <th scope="row" className="number">
                  {index + numberedFrom}
                </th>
                {columns.map((column) => {
                  const field = `${name}.${index}.${column.key}`;
                  const one = cells.find((cell) => cell.field === field);
                  return (
                    <td key={column.key}>
                      <TextCell
                        isNumber
                        name={field}
                        label={`${column.header} of ${numberedFrom === 0 ? "power" : "point"} ${index + numberedFrom}, ${column.unit}`}
                        defaultValue={one?.value}
                      />
                      {one ? (
                        <div className={css.file}>
                          <SaidPlace said={one} />
                        </div>
                      ) : null}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </SaidBeside>
      {count < most ? (
        <div>
          <Button kind="quiet" onClick={() => setCount(count + step)}>
            More lines
          </Button>
        </div>
      ) : null}
    </FieldGroup>
  );
}
