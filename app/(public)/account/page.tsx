import { redirect } from "next/navigation";
import { ActionForm } from "@/app/_ui/action-form.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { currentActor } from "@/lib/web/auth";
import { changePasswordAction } from "./actions";

export const metadata = { title: "Your password" };

/** For staff and customers alike, which is why it stands in neither one's part of the house. */
export default async function AccountPage() {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in?to=/account");
  return (
    <Page
      title="Your password"
      lead={`You are signed in as ${actor.name}. After the change you sign in again, here and everywhere else.`}
    >
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
          <LinkButton href="/">Leave it</LinkButton>
        </div>
      </ActionForm>
    </Page>
  );
}
