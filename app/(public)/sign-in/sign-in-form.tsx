import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";

type Props = { readonly csrfToken: string; readonly target: string };

/** A plain form to the sign-in address itself: it works without JavaScript. */
export function SignInForm({ csrfToken, target }: Props) {
  return (
    <form className="form" method="post" action="/api/auth/callback/credentials" aria-label="Sign in">
      <input type="hidden" name="csrfToken" value={csrfToken} />
      <input type="hidden" name="callbackUrl" value={target} />
      <TextField
        name="email"
        label="E-mail address"
        type="email"
        autoComplete="username"
        maxLength={200}
        autoFocus
      />
      <TextField
        name="password"
        label="Password"
        type="password"
        autoComplete="current-password"
        maxLength={200}
      />
      <CheckboxField
        name="bench"
        label="At the bench"
        hint="For technicians: stays open for twelve hours beside the furnace; records, and does not sign, accept or change settings."
      />
      <div className="form-actions">
        <SubmitButton>Sign in</SubmitButton>
      </div>
    </form>
  );
}
