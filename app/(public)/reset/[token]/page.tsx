import { ActionForm } from "@/app/_ui/action-form.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { accessLinkView } from "@/lib/views/access-link";
import { connectDatabase } from "@/lib/web/connect-database";
import { NewPasswordFields } from "../../new-password-fields";
import { setPasswordByLinkAction } from "./actions";

export const metadata = { title: "A new password", referrer: "same-origin" };

type Props = { readonly params: Promise<{ readonly token: string }> };

export default async function NewPasswordPage({ params }: Props) {
  const { token } = await params;
  connectDatabase();
  const link = await accessLinkView("reset", token, new Date());
  if (!link)
    return (
      <Page title="A new password">
        <Notice kind="caution" title="This link opens nothing any more">
          It was used, a later one was sent, or its hour is over.
        </Notice>
        <LinkButton href="/reset">Ask for another link</LinkButton>
      </Page>
    );
  return (
    <Page
      title="A new password"
      lead={`For ${link.email}. Every session of yours ends, and you sign in with the new password.`}
    >
      <ActionForm action={setPasswordByLinkAction} label="Set a new password">
        <input type="hidden" name="token" value={token} />
        <input type="hidden" name="username" autoComplete="username" value={link.email} />
        <NewPasswordFields />
        <div className="form-actions">
          <SubmitButton>Set the password</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
