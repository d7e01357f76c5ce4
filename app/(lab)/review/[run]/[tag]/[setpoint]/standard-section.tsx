import { Section } from "@/app/_ui/section";
import { StandardTable } from "@/app/(lab)/certificates/standard-table";
import type { ReviewResultPage } from "@/lib/views/review-result";

/** What the result stands on, with its certificates and due dates. */
export function StandardSection({ standards }: { readonly standards: ReviewResultPage["standards"] }) {
  return (
    <Section title="Standards" note="As on the days of the run." wide>
      <StandardTable standards={standards} />
    </Section>
  );
}
