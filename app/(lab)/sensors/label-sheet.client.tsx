"use client";
import { useState } from "react";
import { describedBy } from "@/app/_ui/described-by";
import { FieldFrame } from "@/app/_ui/field-frame";
import {
  type LabelLayoutName,
  labelLayoutNames,
  labelLayouts,
  labelsPerPage,
  startProblem,
} from "@/lib/domain/sensor/label-layouts";

/** What the labels are printed on, and where a sheet that was begun goes on. A place it does not have is refused here. */
export function LabelSheet({ id }: { readonly id: string }) {
  const [name, setName] = useState<LabelLayoutName>("roll-50x25");
  const [typed, setTyped] = useState("1");
  const layout = labelLayouts[name];
  const problem = startProblem(layout, Number(typed)) ?? "";
  const hint = layout.sheet
    ? `From 1 to ${labelsPerPage(layout)}, row by row.`
    : "A roll goes on by itself: this is for sheets.";
  const start = `${id}-start`;
  return (
    <>
      <FieldFrame id={`${id}-layout`} label="Printed on">
        <select
          id={`${id}-layout`}
          name="layout"
          className="input"
          value={name}
          onChange={(event) => setName(event.target.value as LabelLayoutName)}
        >
          {labelLayoutNames.map((one) => (
            <option key={one} value={one}>
              {labelLayouts[one].name}
            </option>
          ))}
        </select>
      </FieldFrame>
      <FieldFrame id={start} label="First free label of the sheet" hint={hint} error={problem || undefined}>
        <input
          // The form is sent to a tab of its own: what is wrong must hold it back here.
          ref={(field) => field?.setCustomValidity(problem)}
          id={start}
          name="startAt"
          className="input"
          type="number"
          min={layout.sheet ? 1 : undefined}
          max={layout.sheet ? labelsPerPage(layout) : undefined}
          autoComplete="off"
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          onInvalid={(event) => event.currentTarget.closest("details")?.setAttribute("open", "")}
          aria-invalid={problem ? true : undefined}
          aria-describedby={describedBy(start, hint, problem || undefined)}
        />
      </FieldFrame>
    </>
  );
}
