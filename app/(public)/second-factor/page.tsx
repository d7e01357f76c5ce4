import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { SecondStep } from "@/lib/web/authorize";
import { env } from "@/lib/web/env";
import { readSealed } from "@/lib/web/sealed-cookie";
import { cookieNames } from "@/lib/web/session-cookie";
import { codeMessage } from "./code-message";

export const metadata = { title: "One-time code" };

type Props = { readonly searchParams: Promise<{ readonly error?: string | string[] }> };

/** The second step of a sign-in: a plain form, which works without JavaScript. */
export default async function SecondFactorPage({ searchParams }: Props) {
  const { error } = await searchParams;
  const step = await readSealed("step", SecondStep);
  if (!step) redirect("/sign-in?said=code-late");
  const names = cookieNames(env().isHttps);
  const jar = await cookies();
  const csrf = jar.get(names.csrf)?.value.split("|")[0] ?? "";
  const message = codeMessage(typeof error === "string" ? error : undefined);
  return (
    <Page
      title="One-time code"
      lead="Open your authenticator and type the six digits it shows for this laboratory. A recovery code does as well, once."
    >
      {message ? <Notice kind="danger">{message}</Notice> : null}
      <form className="form" method="post" action="/api/auth/callback/code" aria-label="One-time code">
        <input type="hidden" name="csrfToken" value={csrf} />
        <input type="hidden" name="callbackUrl" value={jar.get(names.target)?.value ?? "/"} />
        <TextField name="code" label="Code" autoComplete="one-time-code" maxLength={60} autoFocus />
        <div className="form-actions">
          <SubmitButton>Go on</SubmitButton>
          <LinkButton href="/sign-in">Begin again</LinkButton>
        </div>
      </form>
      <p className="quiet form">
        Neither the device nor a recovery code is left? The laboratory’s quality manager can take the codes
        away, after making sure who asks.
      </p>
    </Page>
  );
}
