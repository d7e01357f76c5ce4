import { ActionForm } from "@/app/_ui/action-form.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { resetFactorAction, unlockPersonAction } from "./actions";

type Person = {
  readonly id: string;
  readonly lockedUntil: string | null;
  readonly hasSecondFactor: boolean;
  readonly isSelf: boolean;
};

/** A locked account, and one-time codes whose device is lost. */
export function AccountSections({ person }: { readonly person: Person }) {
  const identity = <input type="hidden" name="id" value={person.id} />;
  return (
    <>
      {person.lockedUntil ? (
        <Section title="Locked" note="After too many wrong passwords or codes. The owner was told by mail.">
          <p>
            It opens by itself at <Timestamp at={person.lockedUntil} />.
          </p>
          <ActionForm action={unlockPersonAction} label="Unlock the account">
            {identity}
            <div className="form-actions">
              <SubmitButton kind="quiet">Unlock it now</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ) : null}
      {person.hasSecondFactor && !person.isSelf ? (
        <Section
          title="One-time codes"
          note="For a lost device without recovery codes. Ends every session, and the owner is told by mail."
        >
          <ActionForm action={resetFactorAction} label="Take the one-time codes away">
            {identity}
            <TextField
              name="reason"
              label="How you made sure who asks"
              hint="Kept in the audit log: write no name."
              maxLength={300}
            />
            <div className="form-actions">
              <SubmitButton kind="danger">Take the codes away</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ) : null}
    </>
  );
}
