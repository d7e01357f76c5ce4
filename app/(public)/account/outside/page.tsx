import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { cookieNames } from "@/lib/web/session-cookie";
import { OutsideForm } from "../../sign-in/outside-form";

export const metadata = { title: "Link with the provider" };

/** The password was right; now the provider says who they are there. */
export default async function OutsidePage() {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in?to=/account");
  const csrf = (await cookies()).get(cookieNames(env().isHttps).csrf)?.value.split("|")[0];
  if (!env().outside || !csrf) redirect("/account");
  return (
    <Page
      title="Link with the provider"
      lead="Sign in there as yourself within ten minutes; then you come back, and the two are linked."
      actions={<LinkButton href="/account">Leave it</LinkButton>}
    >
      <OutsideForm csrfToken={csrf} target="/account" label="Go to the provider" />
    </Page>
  );
}
