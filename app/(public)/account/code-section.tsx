import { ActionForm } from "@/app/_ui/action-form.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { endFactorAction } from "./actions";

type Props = {
  readonly account: {
    readonly hasSecondFactor: boolean;
    readonly recoveryCodesLeft: number;
    readonly isAdvised: boolean;
    readonly mustSetUp: boolean;
  };
};

/** One-time codes: whether there are any, and the way to them or away from them. */
export function CodeSection({ account }: Props) {
  if (!account.hasSecondFactor)
    return (
      <Section title="One-time codes">
        <p>
          An authenticator on your telephone shows a code that each sign-in then asks for beside the password.
          {account.isAdvised ? " Advised for you: your word stands on what others rely on." : ""}
          {account.mustSetUp ? " The laboratory asks for it: set it up before anything else." : ""}
        </p>
        <LinkButton href="/account/codes">Set up one-time codes</LinkButton>
      </Section>
    );
  return (
    <Section title="One-time codes" note="Each sign-in asks for one.">
      <p>
        {account.recoveryCodesLeft} of 10 recovery codes are left.{" "}
        <a href="/account/codes">Set the codes up anew</a> on another device, with new recovery codes.
      </p>
      <ActionForm action={endFactorAction} label="Give up one-time codes">
        <TextField name="password" label="Your password" type="password" autoComplete="current-password" />
        <TextField name="code" label="A one-time code" autoComplete="one-time-code" maxLength={60} />
        <div className="form-actions">
          <SubmitButton kind="danger">Give up one-time codes</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
