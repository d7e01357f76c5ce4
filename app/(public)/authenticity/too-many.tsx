import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";

export function TooMany({ seconds }: { readonly seconds: number }) {
  return (
    <Page title="Is this certificate genuine?">
      <Notice kind="caution" title="Too many questions from your address">
        The laboratory answers thirty a minute. Open this page again in {seconds} seconds.
      </Notice>
    </Page>
  );
}
