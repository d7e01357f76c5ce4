import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { LaboratoryFields } from "@/app/(lab)/laboratory/laboratory-fields";
import { isFirstAccessOpenView } from "@/lib/views/first-access";
import { connectDatabase } from "@/lib/web/connect-database";
import { acceptFirstAccessAction } from "./actions";

export const metadata = { title: "First access" };

type Props = { readonly params: Promise<{ readonly token: string }> };

export default async function FirstAccessPage({ params }: Props) {
  const { token } = await params;
  connectDatabase();
  if (!(await isFirstAccessOpenView(token, new Date())))
    return (
      <Page title="First access">
        <Notice kind="caution" title="This link opens nothing any more">
          It was used already, or its day is over. While nobody can sign in, starting Emfolio again prints a
          new one.
        </Notice>
      </Page>
    );
  return (
    <Page
      title="First access"
      lead="Nobody can sign in yet. Record the laboratory and yourself, its first quality manager; you then let everybody else in. This page opens once."
    >
      <ActionForm action={acceptFirstAccessAction} label="First access">
        <input type="hidden" name="token" value={token} />
        <FieldGroup legend="The laboratory">
          <LaboratoryFields prefix="laboratory." />
        </FieldGroup>
        <FieldGroup legend="You, the first quality manager">
          <TextField name="name" label="Your name" hint="As it stands on certificates." autoComplete="name" />
          <TextField name="email" label="E-mail address" type="email" autoComplete="username" />
          <TextField
            name="password"
            label="Password"
            type="password"
            autoComplete="new-password"
            hint="At least 12 characters; a few words in a row are good."
          />
        </FieldGroup>
        <div className="form-actions">
          <SubmitButton>Record the laboratory and me</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
