import { ActionForm } from "@/app/_ui/action-form.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { changePasswordAction } from "./actions";

export function PasswordSection() {
  return (
    <Section title="Password" note="After the change you sign in again, here and everywhere else.">
      <ActionForm action={changePasswordAction} label="Change your password">
        <TextField
          name="oldPassword"
          label="Your present password"
          type="password"
          autoComplete="current-password"
        />
        <TextField
          name="password"
          label="The new one"
          type="password"
          autoComplete="new-password"
          hint="At least 12 characters; a few words in a row are good."
        />
        <TextField
          name="passwordAgain"
          label="The new one again"
          type="password"
          autoComplete="new-password"
        />
        <div className="form-actions">
          <SubmitButton>Change the password</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
