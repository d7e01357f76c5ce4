import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { CharacterisationRunView } from "@/lib/views/characterisation-run";
import { submitCharacterisationAction } from "./actions";

type Props = { readonly view: CharacterisationRunView; readonly today: string };

const aYearFrom = (day: string): string =>
  `${Number(day.slice(0, 4)) + 1}${day.slice(4)}`.replace("-02-29", "-02-28");

/** All surveys together, for another person; or what is still missing. */
export function SubmitForm({ view, today }: Props) {
  if (view.missing.length > 0)
    return (
      <Section title="Submit">
        <p>Still to be measured:</p>
        <ul className="list">
          {view.missing.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </Section>
    );
  return (
    <Section title="Submit" note="Another person accepts it: nobody who measured a survey of it.">
      <ActionForm action={submitCharacterisationAction} label="Submit the characterisation">
        <input type="hidden" name="characterisationRunId" value={view.id} />
        <DateField
          name="validUntil"
          label="Holds until"
          defaultValue={aYearFrom(today)}
          hint="Runs use it up to and including this day."
        />
        <div className="form-actions">
          <SubmitButton>Submit for acceptance</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
