import { ActionForm } from "@/app/_ui/action-form.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { custodyLabels } from "@/lib/domain/custody/labels";
import { moveSensorsAction } from "./actions";

type Props = {
  /** Given: of one sensor, on its own page. */
  readonly tag?: string;
  readonly places: readonly { readonly code: string; readonly name: string }[];
};

const kinds = ["stored", "from-furnace", "to-provider", "from-provider"] as const;

/** Where sensors went: scan their labels one after the other; a scanner ends each with a line. */
export function MoveForm({ tag, places }: Props) {
  return (
    <ActionForm action={moveSensorsAction} label="Record where it went">
      {tag === undefined ? (
        <TextArea
          name="tags"
          label="Sensors"
          hint="Scan or type their labels, one after the other."
          rows={4}
        />
      ) : (
        <input type="hidden" name="tags" value={tag} />
      )}
      <SelectField
        name="kind"
        label="What happened"
        choices={kinds.map((value) => ({ value, label: custodyLabels[value] }))}
      />
      <SelectField
        name="placeCode"
        label="Storage place"
        prompt="None"
        choices={places.map(({ code, name }) => ({ value: code, label: `${code} ${name}` }))}
        optional
      />
      <TextField
        name="whom"
        label="Provider"
        hint="Where it was sent to one, or came back."
        maxLength={160}
        optional
      />
      <TextField
        name="condition"
        label="Condition"
        hint="As it looked at this moment."
        maxLength={400}
        optional
      />
      <div className="form-actions">
        <SubmitButton kind={tag === undefined ? "primary" : "quiet"}>Record where it went</SubmitButton>
      </div>
    </ActionForm>
  );
}
