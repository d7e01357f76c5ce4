import { ActionForm } from "@/app/_ui/action-form.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { setIntervalAction } from "./actions";

type Props = {
  /** Empty: for all. */
  readonly serial: string;
  readonly months: number | null;
  readonly noticeDays: number;
};

/** The interval is the customer's to set: nothing is proposed, and no certificate prints it (ISO/IEC 17025, 7.8.4.3). */
export function IntervalForm({ serial, months, noticeDays }: Props) {
  return (
    <ActionForm action={setIntervalAction} label={serial ? `Interval of ${serial}` : "Interval for all"}>
      <input type="hidden" name="serial" value={serial} />
      <div className="fields">
        <NumberField
          name="months"
          label="Calibrate again after"
          unit="months"
          optional
          hint="Empty: no reminder."
          defaultValue={months ?? ""}
        />
        <NumberField name="noticeDays" label="Remind us" unit="days before" defaultValue={noticeDays} />
      </div>
      <div className="form-actions">
        <SubmitButton kind="quiet">{serial ? "Set it for this sensor" : "Set it for all"}</SubmitButton>
      </div>
    </ActionForm>
  );
}
