import { ActionForm } from "@/app/_ui/action-form.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { askResetAction } from "./actions";

export const metadata = { title: "A new password" };

type Props = { readonly searchParams: Promise<{ readonly said?: string | string[] }> };

export default async function ResetPage({ searchParams }: Props) {
  const { said } = await searchParams;
  return (
    <Page
      title="A new password"
      lead="Write the address you sign in with. A link for a new password comes by mail; it works once, for an hour."
    >
      {said === "asked" ? (
        <Notice kind="done">
          If somebody signs in with this address, a link is on its way to it. Nothing came after a few
          minutes? Look among unwanted mail, or ask the laboratory’s quality manager.
        </Notice>
      ) : null}
      <ActionForm action={askResetAction} label="Ask for a link">
        <TextField name="email" label="E-mail address" type="email" autoComplete="username" maxLength={200} />
        <div className="form-actions">
          <SubmitButton>Send me a link</SubmitButton>
          <LinkButton href="/sign-in">Back</LinkButton>
        </div>
      </ActionForm>
    </Page>
  );
}
