import { redirect } from "next/navigation";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { accountView } from "@/lib/views/account";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { load } from "@/lib/web/load";
import { accountMessage } from "./account-message";
import { CodeSection } from "./code-section";
import { OutsideSection } from "./outside-section";
import { PasswordSection } from "./password-section";
import { SessionSection } from "./session-section";

export const metadata = { title: "Your account" };

type Props = { readonly searchParams: Promise<{ readonly said?: string | string[] }> };

/** For staff and customers alike, which is why it stands in neither one's part of the house. */
export default async function AccountPage({ searchParams }: Props) {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in?to=/account");
  const account = await load(accountView(actor, new Date()));
  const { said } = await searchParams;
  const message = accountMessage(typeof said === "string" ? said : undefined);
  return (
    <Page
      title="Your account"
      lead={`You are signed in as ${actor.name}${actor.session === "bench" ? ", at the bench: this session records and does not sign" : ""}.`}
      actions={<LinkButton href="/">Back to work</LinkButton>}
    >
      {message ? <Notice kind="done">{message}</Notice> : null}
      <SessionSection sessions={account.sessions} />
      <CodeSection account={account} />
      {env().outside ? <OutsideSection isLinked={account.outside.length > 0} /> : null}
      <PasswordSection />
    </Page>
  );
}
