import { redirect } from "next/navigation";
import { ActionForm } from "@/app/_ui/action-form.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { begunFactorView } from "@/lib/views/account";
import { currentActor } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { beginFactorAction, confirmFactorAction } from "../actions";
import { SecretPicture } from "./secret-picture";

export const metadata = { title: "One-time codes" };

export default async function CodesPage() {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in?to=/account/codes");
  const begun = await load(begunFactorView(actor, new Date()));
  return (
    <Page
      title="Set up one-time codes"
      lead="An authenticator shows six digits that change every thirty seconds; each sign-in then asks for them beside the password."
    >
      {actor.mustSetUp ? (
        <Notice kind="caution">
          The laboratory asks for one-time codes from whoever holds your roles. Nothing else opens until they
          are set up.
        </Notice>
      ) : null}
      {begun ? (
        <ActionForm action={confirmFactorAction} label="The first code">
          <SecretPicture uri={begun.uri} secret={begun.secret} />
          <TextField
            name="code"
            label="The code that it shows now"
            autoComplete="one-time-code"
            maxLength={60}
          />
          <div className="form-actions">
            <SubmitButton>Set the codes up</SubmitButton>
            <LinkButton href="/account">Leave it</LinkButton>
          </div>
        </ActionForm>
      ) : (
        <ActionForm action={beginFactorAction} label="Begin the set-up">
          <TextField
            name="password"
            label="Your password"
            type="password"
            autoComplete="current-password"
            hint="Once more: a screen left open is not enough."
          />
          <div className="form-actions">
            <SubmitButton>Show the picture to scan</SubmitButton>
            <LinkButton href="/account">Leave it</LinkButton>
          </div>
        </ActionForm>
      )}
    </Page>
  );
}
