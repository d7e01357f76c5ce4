import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";

/** Said alike of what is not there and of what is not for whoever asks. */
export function NothingHere() {
  return (
    <Page
      title="There is nothing at this address"
      lead="The address may be mistyped, or what it named is not yours to see. Nothing was changed."
      actions={
        <LinkButton href="/" kind="primary">
          To the first page
        </LinkButton>
      }
    />
  );
}
