import { BareShell } from "@/app/_ui/bare-shell";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";

export const metadata = { title: "Not there" };

export default function NotFound() {
  return (
    <BareShell>
      <Page
        title="There is nothing at this address"
        lead="The address may be mistyped, or what it named is not yours to see. Nothing was changed."
        actions={
          <LinkButton href="/" kind="primary">
            To the first page
          </LinkButton>
        }
      />
    </BareShell>
  );
}
