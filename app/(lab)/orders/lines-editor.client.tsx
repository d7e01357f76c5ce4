"use client";
import { type MouseEvent, useState } from "react";
import { Button } from "@/app/_ui/button";
import { FieldError } from "@/app/_ui/field-error.client";
import { useFormState } from "@/app/_ui/form-context.client";
import { keptLines, type LineDraft, type LineField, lineAfter, lineErrors } from "./line-draft";
import type { Providers } from "./line-options-fields.client";
import { OrderLineFields } from "./order-line-fields.client";

type Row = {
  readonly key: number;
  readonly line: LineDraft;
  readonly errors: Readonly<Partial<Record<LineField, string>>>;
  readonly isNew: boolean;
};

const without = (errors: Row["errors"], field: LineField): Row["errors"] => ({
  ...errors,
  [field]: undefined,
});

type Props = { readonly initial: readonly LineDraft[]; readonly providers: Providers };

/**
 * The lines of an order. What is typed and what is wrong stay with their line when another is added or taken away, and
 * through refusals. Without JavaScript "Add a line" posts the form and comes back with one line more.
 */
export function LinesEditor({ initial, providers }: Props) {
  const state = useFormState();
  const [seen, setSeen] = useState(state);
  const [next, setNext] = useState(1000);
  const [rows, setRows] = useState<readonly Row[]>(() =>
    (keptLines(state) ?? initial).map((line, key) => ({
      key,
      line,
      errors: lineErrors(state, key),
      isNew: false,
    })),
  );
  if (state !== seen) {
    setSeen(state);
    // New keys: React empties the selects of a form after its action, so they are made anew from what we hold.
    setRows(
      rows.map(({ line }, index) => ({
        key: next + index,
        line,
        errors: lineErrors(state, index),
        isNew: false,
      })),
    );
    setNext(next + rows.length);
  }
  const change = (key: number, field: LineField, value: string) =>
    setRows((all) =>
      all.map((row) =>
        row.key === key
          ? { ...row, line: { ...row.line, [field]: value }, errors: without(row.errors, field) }
          : row,
      ),
    );
  const add = (event: MouseEvent) => {
    event.preventDefault();
    setRows([...rows, { key: next, line: lineAfter(rows.at(-1)?.line), errors: {}, isNew: true }]);
    setNext(next + 1);
  };
  const remove = (key: number) => setRows(rows.filter((row) => row.key !== key));
  return (
    <div className="stack">
      {rows.map((row, index) => (
        <OrderLineFields
          key={row.key}
          index={index}
          line={row.line}
          errors={row.errors}
          isNew={row.isNew}
          providers={providers}
          onChange={(field, value) => change(row.key, field, value)}
          remove={
            rows.length > 1 ? (
              <Button onClick={() => remove(row.key)}>Take line {index + 1} away</Button>
            ) : undefined
          }
        />
      ))}
      <FieldError name="lines" />
      <div className="row">
        <Button type="submit" name="addLine" value="1" onClick={add}>
          Add a line
        </Button>
      </div>
    </div>
  );
}
