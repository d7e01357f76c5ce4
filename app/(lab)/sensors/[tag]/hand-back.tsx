import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { collectSensorAction } from "../actions";

type Props = { readonly tag: string; readonly isIssued: boolean };

const HandBackForm = ({ tag, isIssued }: Props) => (
  <ActionForm action={collectSensorAction} label="Hand the sensor back">
    <input type="hidden" name="tag" value={tag} />
    <ChoiceField
      name="handedOver"
      legend="Handed over"
      defaultValue="in-person"
      choices={[
        { value: "in-person", label: "In person" },
        { value: "carrier", label: "By carrier" },
      ]}
    />
    {isIssued ? null : (
      <TextField
        name="reason"
        label="Why it leaves without a certificate"
        hint="It stands in the audit log. Do not name people."
        maxLength={400}
      />
    )}
    <div className="form-actions">
      <SubmitButton kind={isIssued ? "primary" : "danger"}>Hand {tag} back</SubmitButton>
    </div>
  </ActionForm>
);

/** With its certificate in plain sight; without one behind a step more. */
export function HandBack(props: Props) {
  return (
    <Section title="Hand back" id="hand-back">
      {props.isIssued ? (
        <HandBackForm {...props} />
      ) : (
        <Disclosure summary="Hand back without a certificate">
          <HandBackForm {...props} />
        </Disclosure>
      )}
    </Section>
  );
}
