import { redirect } from "next/navigation";
import { ActionForm } from "@/app/_ui/action-form.client";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { currentActor } from "@/lib/web/auth";
import { signOutAction } from "./actions";

export const metadata = { title: "Sign out" };

export default async function SignOutPage() {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in");
  return (
    <Page
      title="Sign out"
      lead={`You are signed in as ${actor.name}. Signing out ends this session; those on other devices are listed at your account.`}
    >
      <ActionForm action={signOutAction} label="Sign out">
        <div className="form-actions">
          <SubmitButton>Sign out</SubmitButton>
          <LinkButton href="/">Stay</LinkButton>
          <LinkButton href="/account">Your sessions</LinkButton>
        </div>
      </ActionForm>
    </Page>
  );
}
