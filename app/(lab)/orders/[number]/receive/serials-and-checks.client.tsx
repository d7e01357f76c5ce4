"use client";
import { type ReactNode, useState } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import { useField, useFormState } from "@/app/_ui/form-context.client";
import { pastedSerials, serialKey } from "@/lib/domain/sensor/serials";
import type { SensorHere } from "@/lib/domain/sensor/still-here";
import { type CheckDrafts, type CheckField, keptDrafts, keptSerials, noDraft, oneEndOf } from "./check-draft";
import { SensorChecks } from "./sensor-checks.client";
import { SerialsHere } from "./serials-here";

/** As the operation has it: lib/domain/sensor/schema.ts. */
const longestPaste = 40_000;

type Props = {
  /** The fields that hold for all sensors of the paste; they stand between the serials and the table. */
  readonly children: ReactNode;
  /** The customer's sensors that have not left the house. */
  readonly stillHere: readonly SensorHere[];
};

/** The pasted serials, and a row for each as soon as it is there. */
export function SerialsAndChecks({ children, stillHere }: Props) {
  const state = useFormState();
  const { id, error } = useField("serials");
  const [text, setText] = useState(() => keptSerials(state));
  const keptEnd = useField("end").kept ?? "";
  const [endOfAll, setEndOfAll] = useState(keptEnd);
  const [drafts, setDrafts] = useState<CheckDrafts>(() => keptDrafts(state));
  const [seen, setSeen] = useState({ state, times: 0 });
  // React empties the selects of a form after its action: the table is made anew from what we hold.
  if (state !== seen.state) setSeen({ state, times: seen.times + 1 });
  // A list this long is no paste of two hundred: the desk is told, and only its beginning is sent.
  const isTooLong = text.length > longestPaste;
  const serials = isTooLong ? [] : pastedSerials(text).slice(0, 200);
  const change = (serial: string, field: CheckField, value: string) =>
    setDrafts((all) => {
      const key = serialKey(serial);
      return { ...all, [key]: { ...(all[key] ?? noDraft), [field]: value } };
    });
  const onlyEnd = oneEndOf(
    serials.map(({ serial }) => serialKey(serial)),
    drafts,
    endOfAll,
  );
  const how = "One a line: a scanner goes to the next line by itself, a column copied from a sheet will do.";
  const hint = isTooLong
    ? "This is too much for one paste: at most 200 serial numbers. Nothing of it is lost here; take a part of it."
    : serials.length === 0
      ? how
      : `${serials.length} ${serials.length === 1 ? "sensor" : "sensors"}. ${how}`;
  return (
    <>
      <FieldFrame id={id} label="Serial numbers" hint={hint} error={error}>
        <textarea
          id={id}
          name={isTooLong ? undefined : "serials"}
          className="input"
          rows={5}
          value={text}
          required
          spellCheck={false}
          onChange={(event) => setText(event.target.value)}
          aria-invalid={error ? true : undefined}
          aria-describedby={describedBy(id, hint, error)}
        />
      </FieldFrame>
      {isTooLong ? <input type="hidden" name="serials" value={text.slice(0, longestPaste + 1)} /> : null}
      <SerialsHere serials={serials} known={stillHere} />
      {/* Only listens to what holds for all; the controls are its children. */}
      <div
        className="stack"
        onChange={({ target }) => {
          if (target instanceof HTMLSelectElement && target.name === "end") setEndOfAll(target.value);
        }}
      >
        {children}
      </div>
      <p role="status" className="quiet">
        {onlyEnd === ""
          ? ""
          : `Only ${onlyEnd} ends are in this paste. Of a roll both ends are measured: is the other end here, or to come?`}
      </p>
      {serials.length > 0 ? (
        <SensorChecks key={seen.times} serials={serials} drafts={drafts} onChange={change} />
      ) : null}
    </>
  );
}
