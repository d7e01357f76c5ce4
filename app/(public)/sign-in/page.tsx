import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { cookieNames } from "@/lib/web/session-cookie";
import { OutsideForm } from "./outside-form";
import { SignInForm } from "./sign-in-form";
import { signInMessage } from "./sign-in-message";
import { wayBack, wayThere } from "./way-back";

export const metadata = { title: "Sign in" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const one = (value: string | string[] | undefined): string | undefined =>
  typeof value === "string" ? value : undefined;

export default async function SignInPage({ searchParams }: Props) {
  const query = await searchParams;
  const actor = await currentActor();
  if (actor) redirect(actor.kind === "customer" ? "/portal" : "/");
  const error = one(query.error);
  // The password was right; the second step has a page of its own.
  if (error?.startsWith("code"))
    redirect(error === "code" ? "/second-factor" : `/second-factor?error=${error}`);
  const names = cookieNames(env().isHttps);
  const jar = await cookies();
  // After a refusal the address no longer says where the person wanted to go; the cookie still does.
  const kept = error === undefined ? undefined : jar.get(names.target)?.value;
  const back = wayBack(one(query.callbackUrl), env().publicOrigin);
  const said = one(query.said) ?? back.said;
  const target = one(query.to) ?? back.to ?? kept ?? "/";
  const csrf = jar.get(names.csrf)?.value.split("|")[0];
  // The token's cookie is set at this address, which then leads back here with `callbackUrl`.
  if (!csrf && one(query.callbackUrl) === undefined)
    redirect(`/api/auth/signin?callbackUrl=${encodeURIComponent(wayThere(target, said))}`);
  const message = signInMessage(error, said);
  return (
    <Page
      title="Sign in"
      lead="Emfolio is where a laboratory calibrates thermocouples by comparison: it keeps the orders, the readings, what the results rest on, and the certificates. People of the laboratory and their customers sign in here."
    >
      {message ? <Notice kind={message.kind}>{message.text}</Notice> : null}
      {csrf ? (
        <>
          <SignInForm csrfToken={csrf} target={target} />
          {env().outside ? (
            <OutsideForm csrfToken={csrf} target={target} label="By the organisation’s own provider" />
          ) : null}
        </>
      ) : (
        <Notice kind="caution" title="Cookies are switched off">
          <p>Signing in needs one cookie of this address. Allow it in your browser, then try again.</p>
          <LinkButton href="/sign-in">Try again</LinkButton>
        </Notice>
      )}
      <p className="quiet form">
        <a href="/reset">The password is lost</a>: a link for a new one comes by mail. No address yet? The
        laboratory’s quality manager invites people, and so does a colleague of yours who may.
      </p>
      <p className="quiet form">
        You hold a certificate of this laboratory? <a href="/authenticity">Check whether it is genuine</a>:
        that needs no account.
      </p>
    </Page>
  );
}
