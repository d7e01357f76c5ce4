import { SubmitButton } from "@/app/_ui/submit-button.client";

type Props = { readonly csrfToken: string; readonly target: string; readonly label: string };

/** A plain form that leads to the outside identity provider, and back. */
export function OutsideForm({ csrfToken, target, label }: Props) {
  return (
    <form className="form" method="post" action="/api/auth/signin/openid" aria-label={label}>
      <input type="hidden" name="csrfToken" value={csrfToken} />
      <input type="hidden" name="callbackUrl" value={target} />
      <div className="form-actions">
        <SubmitButton kind="quiet" pending="Going there…">
          {label}
        </SubmitButton>
      </div>
    </form>
  );
}
