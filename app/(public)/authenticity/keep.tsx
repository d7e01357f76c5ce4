import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";

/** The check to take along, and the keys it needs. */
export function Keep() {
  return (
    <Section title="Without us">
      <p>
        The same check fits into one file to keep. It opens in a browser without a network and goes on working
        when this laboratory does not. How a certificate stands today, only this site can tell.
      </p>
      <div className="row">
        <LinkButton href="/authenticity/keep" download>
          Take the check along (one HTML file)
        </LinkButton>
        <a href="/.well-known/seal-keys.json">The laboratory’s keys</a>
      </div>
    </Section>
  );
}
