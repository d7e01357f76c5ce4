"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { TextCell } from "@/app/_ui/cell-fields.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import css from "./furnaces.module.css";

export type GridColumn = {
  readonly key: string;
  readonly header: string;
  readonly unit?: string;
  readonly isText?: boolean;
};

type Props = {
  readonly name: string;
  readonly legend: string;
  readonly hint?: string;
  /** "Stop", "Bore": what one line is. */
  readonly line: string;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly Readonly<Record<string, string>>[];
  readonly more?: number;
};

/** Lines of fields, filled by keyboard alone. Lines left empty at the end are left out. */
export function RowGrid({ name, legend, hint, line, columns, rows, more = 6 }: Props) {
  const [count, setCount] = useState(Math.max(rows.length, 1));
  return (
    <FieldGroup legend={legend} hint={hint}>
      <FieldError name={name} />
      <div className="table-wrap">
        <table className={`table ${css.grid}`}>
          <thead>
            <tr>
              <th scope="col" className="number">
                {line}
              </th>
              {columns.map((column) => (
                <th key={column.key} scope="col">
                  {column.header}
                  {column.unit ? <span className="table-unit">{column.unit}</span> : null}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: count }, (_, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the list
              <tr key={index}>
                <th scope="row" className="number">
                  {index + 1}
                </th>
                {columns.map((column) => (
                  <td key={column.key}>
                    <TextCell
                      isNumber={!column.isText}
                      name={`${name}.${index}.${column.key}`}
                      label={`${column.header} of ${line.toLowerCase()} ${index + 1}${column.unit ? `, ${column.unit}` : ""}`}
                      defaultValue={rows[index]?.[column.key]}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div>
        <Button type="button" kind="quiet" onClick={() => setCount(count + more)}>
          More lines
        </Button>
      </div>
    </FieldGroup>
  );
}
