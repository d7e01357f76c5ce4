import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { RunRoomView } from "@/lib/views/run/run-room";
import { recordRoomAction } from "../../actions";

/** What the instrument shows now. Its end is offered once the run has begun. */
export function RoomForm({ view }: { readonly view: RunRoomView }) {
  const { hasBegun, instruments, number, records } = view;
  if (instruments.length === 0)
    return (
      <p>
        No ambient instrument is in service. Record one under <Link href="/standards">Standards</Link>.
      </p>
    );
  const isStarted = records.some(({ moment }) => moment === "start");
  return (
    <ActionForm action={recordRoomAction} label="Room">
      <input type="hidden" name="run" value={number} />
      <div className="fields">
        <SelectField
          name="moment"
          label="At the"
          defaultValue={hasBegun && isStarted ? "end" : "start"}
          choices={[
            { value: "start", label: "start" },
            ...(hasBegun ? [{ value: "end", label: "end" }] : []),
          ]}
        />
        <SelectField
          name="instrument"
          label="Instrument"
          defaultValue={(instruments.find(({ isChosen }) => isChosen) ?? instruments[0])?.tag}
          choices={instruments.map(({ tag, label }) => ({ value: tag, label }))}
        />
        <NumberField name="celsius" label="Shows" unit="°C" />
        <NumberField name="percent" label="Relative humidity shown" unit="%" optional />
      </div>
      {records.length === 0 ? null : (
        <TextField
          name="reason"
          label="Why again"
          hint="Only where this moment is recorded already. It stands with the record, and the signatory reads it."
          maxLength={600}
          autoComplete="off"
          optional
        />
      )}
      <div className="form-actions">
        <SubmitButton size="bench">Record the room</SubmitButton>
      </div>
    </ActionForm>
  );
}
