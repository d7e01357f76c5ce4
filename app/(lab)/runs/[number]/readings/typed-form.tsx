import { ActionForm } from "@/app/_ui/action-form.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { RunReadingsView } from "@/lib/views/run/run-readings";
import { typeReadingsAction } from "../../actions";
import { TypedEntry } from "./typed-entry.client";

export function TypedForm({ view }: { readonly view: RunReadingsView }) {
  return (
    <ActionForm action={typeReadingsAction} shape="wide" label="Type readings">
      <input type="hidden" name="run" value={view.head.number} />
      {view.head.startedAt === null ? (
        <TextField
          name="startedAt"
          label="Zero of the seconds"
          optional
          placeholder="2026-03-02T09:30:00+01:00"
          hint="When second 0 was. Left empty, the last reading is taken to be now."
        />
      ) : null}
      <TypedEntry name="first" title="First entry" channels={view.channels} />
      <TypedEntry name="second" title="Second entry, from the record again" channels={view.channels} />
      <div className="form-actions">
        <SubmitButton>Compare and store</SubmitButton>
      </div>
    </ActionForm>
  );
}
