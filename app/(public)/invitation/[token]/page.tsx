import { ActionForm } from "@/app/_ui/action-form.client";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { accessLinkView } from "@/lib/views/access-link";
import { connectDatabase } from "@/lib/web/connect-database";
import { NewPasswordFields } from "../../new-password-fields";
import { acceptInvitationAction } from "./actions";

export const metadata = { title: "Invitation", referrer: "same-origin" };

type Props = { readonly params: Promise<{ readonly token: string }> };

export default async function InvitationPage({ params }: Props) {
  const { token } = await params;
  connectDatabase();
  const invited = await accessLinkView("invitation", token, new Date());
  if (!invited)
    return (
      <Page title="Invitation">
        <Notice kind="caution" title="This link opens nothing any more">
          It was used, withdrawn, or its time is over. Ask whoever invited you for another.
        </Notice>
      </Page>
    );
  return (
    <Page
      title="Invitation"
      lead={`You will sign in as ${invited.email}. Choose a password; this page opens once.`}
    >
      <ActionForm action={acceptInvitationAction} label="Accept the invitation">
        <input type="hidden" name="token" value={token} />
        <input type="hidden" name="username" autoComplete="username" value={invited.email} />
        <TextField
          name="name"
          label="Your name"
          hint="As it stands on certificates and in lists."
          autoComplete="name"
          defaultValue={invited.name}
        />
        <NewPasswordFields />
        <div className="form-actions">
          <SubmitButton>Set the password</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
