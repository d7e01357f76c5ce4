import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { RunLoadView } from "@/lib/views/run/run-load";
import { tipCheckAction } from "../../actions";

/** One tip after another: the next place without a passed check is chosen already. */
export function TipCheckForm({ view }: { readonly view: RunLoadView }) {
  const places = view.places.filter(({ kind }) => kind !== "shorted");
  const next = places.find(({ tipState }) => tipState !== "passed") ?? places[0];
  return (
    <ActionForm action={tipCheckAction} label="Tip check">
      <input type="hidden" name="run" value={view.head.number} />
      <div className="fields">
        <SelectField
          name="place"
          label="Place"
          defaultValue={next?.place}
          choices={places.map(({ place, tag, channel, tipState }) => ({
            value: place,
            label: `${place}: ${tag}, channel ${channel}${tipState === "passed" ? " (passed)" : ""}`,
          }))}
        />
        <NumberField name="riseMicrovolt" label="Rise on its channel" unit="µV" />
      </div>
      <CheckboxField name="onlyThisChannel" label="No other channel moved" />
      <div className="form-actions">
        <SubmitButton size="bench">Record this tip</SubmitButton>
      </div>
    </ActionForm>
  );
}
