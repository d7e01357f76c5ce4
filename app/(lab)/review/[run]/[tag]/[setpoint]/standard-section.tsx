import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { StandardTable } from "@/app/(lab)/certificates/standard-table";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { RemarksAt } from "./remarks";

/** What the result stands on, with its certificates and due dates. */
export function StandardSection({ result }: { readonly result: ReviewResultPage }) {
  return (
    <Section
      title="Standards"
      note="As on the days of the run."
      actions={
        result.certificate && result.point.state === "measured" ? (
          <LinkButton
            href={`/trace/${result.certificate}?of=${result.tag}&at=${result.point.nominalCelsius}`}
            kind="quiet"
          >
            Its chain to the SI
          </LinkButton>
        ) : null
      }
      wide
    >
      <StandardTable standards={result.standards} />
      <RemarksAt duty={result.duty} place="standard" />
    </Section>
  );
}
