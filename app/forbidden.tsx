import { BareShell } from "@/app/_ui/bare-shell";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";

export const metadata = { title: "Not permitted" };

export default function Forbidden() {
  return (
    <BareShell>
      <Page
        title="Your roles do not open this page"
        lead="Nothing was changed. If your work needs it, a quality manager of the laboratory can give you the role."
        actions={
          <LinkButton href="/" kind="primary">
            To the first page
          </LinkButton>
        }
      />
    </BareShell>
  );
}
