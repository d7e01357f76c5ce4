import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { ReviewRunPage } from "@/lib/views/review-run";
import { letSensorGoAction } from "../actions";

/** One sensor leaves, the others are signed off: to be measured again, or further with what it has. */
export function LetSensorGo({ review }: { readonly review: ReviewRunPage }) {
  const open = review.sensors.filter((sensor) => !sensor.certificate && !sensor.left);
  if (open.length === 0) return null;
  return (
    <Disclosure summary="Let one sensor go on without a certificate">
      <ActionForm action={letSensorGoAction} label="Let a sensor go">
        <input type="hidden" name="runId" value={review.runId} />
        <input type="hidden" name="evaluationId" value={review.evaluationId} />
        <SelectField
          name="sensorId"
          label="Sensor"
          prompt="Choose the sensor"
          choices={open.map(({ id, tag, serial }) => ({ value: id, label: `${tag}, ${serial}` }))}
        />
        <ChoiceField
          name="results"
          legend="Its results in this run"
          choices={[
            {
              value: "put-back",
              label: "Set aside: measure it again",
              hint: "They stay on record. A repeat is authorised before its first reading, with the rule that says which counts.",
            },
            {
              value: "kept",
              label: "Kept for its certificate: it goes on",
              hint: "To be annealed and measured again, or measured at the rest of its setpoints.",
            },
          ]}
        />
        <TextArea name="reason" label="Why" hint="It stands in the record of this review." rows={2} />
        <div className="form-actions">
          <SubmitButton kind="quiet">Let it go</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}
