import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";

const said = {
  // Said alike of what is not there and of what is not for whoever asks.
  nothing: {
    title: "There is nothing at this address",
    lead: "The address may be mistyped, or what it named is not yours to see. Nothing was changed.",
  },
  "not-permitted": {
    title: "Your roles do not open this page",
    lead: "Nothing was changed. If your work needs it, a quality manager of the laboratory can give you the role.",
  },
} as const;

/** Where a way ends, in words, and the way back. */
export function DeadEnd({ kind }: { readonly kind: keyof typeof said }) {
  return (
    <Page
      {...said[kind]}
      actions={
        <LinkButton href="/" kind="primary">
          To the first page
        </LinkButton>
      }
    />
  );
}
